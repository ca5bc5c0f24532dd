package understudy.cli;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;

/** The evenly spaced speeds, or frequencies, of a table. */
final class Steps {

    private static final int USUAL = 10;
    private static final int MOST = 1000;
    /** A last step this near to the end, in steps, is the end: far above rounding. */
    private static final double NEAR = 1e-6;

    private final ToDoubleFunction<String> ends;
    private final ToDoubleFunction<String> apart;

    /**
     * @param ends  makes a number of what was written for an end, or says what is wrong with it
     * @param apart likewise for the step
     */
    Steps(ToDoubleFunction<String> ends, ToDoubleFunction<String> apart) {
        this.ends = ends;
        this.apart = apart;
    }

    /** From the first to the last that is not beyond {@code to}; empty where they can't be read. */
    List<Double> read(String from, String to, String step, Arguments given) {
        double first = number("--from", from, ends, given);
        double last = number("--to", to, ends, given);
        double by = step == null ? (last - first) / USUAL : number("--step", step, apart, given);
        if (Double.isNaN(first) || Double.isNaN(last) || Double.isNaN(by)) {
            return List.of();
        }
        if (first >= last) {
            given.problem("--from", "\"" + from + "\" is not below --to", "write the lower end after --from");
            return List.of();
        }
        double count = Math.floor((last - first) / by + NEAR) + 1;
        if (!(by > 0 && count <= MOST)) {
            given.problem("--step", "\"" + step + "\" makes too many rows", "at most " + MOST + " fit");
            return List.of();
        }
        return IntStream.range(0, (int) count).mapToObj(i -> first + i * by).toList();
    }

    private double number(String option, String written, ToDoubleFunction<String> reader, Arguments given) {
        return given.attempt(option, () -> reader.applyAsDouble(written)).orElse(Double.NaN);
    }
}
