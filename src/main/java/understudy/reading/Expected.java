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

    /** Since 49.5 typed and 49.5 computed may differ in the last bit. */
    private static final double HAIR = 1e-9;

    /** Whether a good circuit can show this. */
    public boolean holds(double shown) {
        double hair = HAIR * Math.max(Math.abs(low), Math.abs(high));
        return shown >= low - hair && shown <= high + hair;
    }

    /** The least multiple of the step that a good circuit shows. */
    public double leastShown() {
        return Math.ceil(low / step - HAIR) * step;
    }

    /** The greatest. */
    public double mostShown() {
        return Math.floor(high / step + HAIR) * step;
    }

    /** "50 km/h, good from 48 to 52". */
    @Override
    public String toString() {
        String symbol = " " + unit.symbol();
        String least = unit.print(leastShown(), step).replace(symbol, "");
        String most = unit.print(mostShown(), step).replace(symbol, "");
        return unit.print(value, step) + (least.equals(most) ? "" : ", good from " + least + " to " + most);
    }
}
