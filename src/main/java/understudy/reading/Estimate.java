package understudy.reading;

import java.util.function.DoubleUnaryOperator;

/**
 * A number that was estimated, and the limits that hold the true one at least 19 times out of 20.
 *
 * @param value between the limits
 */
public record Estimate(double low, double value, double high) {

    public Estimate {
        if (!(low <= value && value <= high)) {
            throw new IllegalArgumentException("limits lie around their value, got " + low + ", " + value + ", " + high);
        }
    }

    public boolean hold(double truth) {
        return truth >= low && truth <= high;
    }

    /** Of a function of the number that rises or falls throughout, as {@code factor / number}: the same limits in other terms. */
    Estimate map(DoubleUnaryOperator monotone) {
        double a = monotone.applyAsDouble(low);
        double b = monotone.applyAsDouble(high);
        return new Estimate(Math.min(a, b), monotone.applyAsDouble(value), Math.max(a, b));
    }
}
