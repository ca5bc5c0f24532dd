package understudy.reading;

/**
 * What a display should show, in its unit. A display that rounds to the nearest step moves a value by half a step at
 * most, so whatever the module computes within its tolerance is shown between {@code low} and {@code high}.
 *
 * @param value computed, neither rounded nor widened
 * @param low   least that a good circuit can show: the value less its tolerance and half a step
 * @param high  most, likewise
 * @param step  of the display, for printing
 * @param unit  of all four
 */
public record Expected(double value, double low, double high, double step, DisplayUnit unit) {

    /** Whether a good circuit can show this. */
    public boolean holds(double shown) {
        // a hair, since 49.5 typed and 49.5 computed may differ in the last bit
        double hair = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
        return shown >= low - hair && shown <= high + hair;
    }

    /** "50 km/h (48 to 52)". */
    @Override
    public String toString() {
        String symbol = " " + unit.symbol();
        return unit.print(value, step) + " (" + unit.print(low, step).replace(symbol, "") + " to "
                + unit.print(high, step).replace(symbol, "") + ")";
    }
}
