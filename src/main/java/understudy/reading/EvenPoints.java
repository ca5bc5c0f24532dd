package understudy.reading;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import understudy.pattern.Pattern;
import understudy.pattern.Speed;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;

/** The evenly spaced speeds, or frequencies, of a table. */
public final class EvenPoints {

    private static final int USUAL = 10;
    private static final int MOST = 1000;
    /** A last step this near to the end, in steps, is the end: far above rounding. */
    private static final double NEAR = 1e-6;
    private static final Range FREQUENCY = new Range(0, 200_000, Unit.HERTZ);

    private EvenPoints() {}

    /**
     * From the lower end to the last that is not beyond the upper one; empty where they can't be read.
     *
     * @param from as it was written, or null; a speed where there is a pattern, else a frequency
     * @param to   likewise
     * @param step likewise; null: a tenth of the way
     */
    public static List<Injected.Point> of(Injected injected, String from, String to, String step, Refusals given) {
        if (from == null || to == null) {
            given.add(from == null ? Control.TO : Control.FROM, "a table has two ends",
                    Remedy.of("give ").set(Control.FROM).then(" and ").set(Control.TO));
            return List.of();
        }
        Optional<Speed> range = injected.pattern().map(Pattern::speed);
        // a step may be smaller than the lowest speed
        Optional<Speed> any = range.map(speed -> new Speed(speed.unit(), speed.metresPerTurn(), 0, 0, speed.toHz()));
        double first = number(Control.FROM, () -> range.isPresent() ? range.get().typedHz(from) : FREQUENCY.typed(from), given);
        double last = number(Control.TO, () -> range.isPresent() ? range.get().typedHz(to) : FREQUENCY.typed(to), given);
        double by = step == null ? (last - first) / USUAL
                : number(Control.STEP, () -> any.isPresent() ? any.get().typedHz(step) : FREQUENCY.typed(step), given);
        return steps(first, last, by, from, step, given).stream()
                .map(each -> range.isPresent() ? injected.atSpeed(each) : injected.atHz(each)).toList();
    }

    private static List<Double> steps(double first, double last, double by, String from, String step, Refusals given) {
        if (Double.isNaN(first) || Double.isNaN(last) || Double.isNaN(by)) {
            return List.of();
        } else if (first >= last) {
            given.add(Control.FROM, "\"" + from + "\" is not below the upper end", "give the lower end here");
            return List.of();
        }
        double count = Math.floor((last - first) / by + NEAR) + 1;
        if (!(by > 0 && count <= MOST)) {
            given.add(Control.STEP, "\"" + step + "\" makes too many rows", "at most " + MOST + " fit");
            return List.of();
        }
        return IntStream.range(0, (int) count).mapToObj(i -> first + i * by).toList();
    }

    private static double number(Control control, Supplier<Double> reader, Refusals given) {
        return given.attempt(Location.of(control), reader).orElse(Double.NaN);
    }
}
