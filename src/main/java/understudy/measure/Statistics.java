package understudy.measure;

import java.util.Arrays;

/**
 * How the values of one kind lie: in the unit of what was measured. All NaN when there are none.
 *
 * @param count  of values
 * @param mean   of them
 * @param rms    of their deviations from the mean
 * @param least  smallest
 * @param most   largest
 */
public record Statistics(int count, double mean, double rms, double least, double most) {

    static Statistics of(double[] values) {
        if (values.length == 0) {
            return new Statistics(0, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
        }
        double mean = Arrays.stream(values).average().orElseThrow();
        double variance = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).average().orElseThrow();
        return new Statistics(values.length, mean, Math.sqrt(variance), Arrays.stream(values).min().orElseThrow(),
                Arrays.stream(values).max().orElseThrow());
    }

    /** Of the differences from each value to the next. */
    static Statistics ofSteps(double[] values) {
        return of(steps(values));
    }

    static double[] steps(double[] values) {
        double[] steps = new double[Math.max(0, values.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = values[i + 1] - values[i];
        }
        return steps;
    }
}
