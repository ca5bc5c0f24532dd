package understudy.reading;

import understudy.quantity.Dimension;

/**
 * A displayed reading held against the expected one.
 *
 * @param sign    what it is
 * @param numbers both of them
 * @param meaning what that may come from, in a few words; empty where it is as expected
 */
public record Judged(Sign sign, String numbers, String meaning) {

    /** What a displayed number is beside the expected one. */
    public enum Sign { AS_EXPECTED, CANNOT_TELL, NOTHING, TWICE, HALF, TOO_HIGH, TOO_LOW }

    /** In one sentence, with both numbers. */
    public String reason() {
        return numbers + (meaning.isEmpty() ? "" : "; " + meaning);
    }

    /** Whether the signal arrived as it should; where it can't be told it did not. */
    public boolean good() {
        return sign == Sign.AS_EXPECTED;
    }

    /** Judges what is shown, in the unit of {@code expected}. */
    public static Judged of(double shown, Expected expected) {
        DisplayUnit unit = expected.unit();
        String numbers = unit.rounded(shown, 6) + " is shown; expected: " + expected;
        boolean pressure = unit.dimension() == Dimension.PRESSURE; // whose zero is a value like any other
        if (!pressure && expected.holds(0)) {
            return new Judged(Sign.CANNOT_TELL, numbers, "so little can't be distinguished from nothing; inject a higher frequency");
        }
        if (expected.holds(shown)) {
            return new Judged(Sign.AS_EXPECTED, numbers, "");
        }
        if (!pressure && Math.abs(shown) <= expected.step() / 2) {
            return new Judged(Sign.NOTHING, numbers, "the signal does not arrive");
        }
        // the same tolerance of a value twice or half as large, and half a step for the rounding of what is shown
        double away = (expected.high() - expected.low()) / 2 - expected.step() / 2;
        if (within(shown - 2 * expected.value(), 2 * away + expected.step() / 2)) {
            return new Judged(Sign.TWICE, numbers, "twice as much, as if both edges of each tooth were counted, or half the teeth declared");
        }
        if (within(shown - expected.value() / 2, away / 2 + expected.step() / 2)) {
            return new Judged(Sign.HALF, numbers, "half as much, as if every other tooth were lost, or twice the teeth declared");
        }
        double percent = 100 * (shown / expected.value() - 1);
        boolean high = shown > expected.value();
        String by = expected.value() == 0 || Math.abs(percent) < 1 ? "" : " by " + Math.round(Math.abs(percent)) + " %";
        return new Judged(high ? Sign.TOO_HIGH : Sign.TOO_LOW, numbers, "too " + (high ? "high" : "low") + by);
    }

    private static boolean within(double difference, double allowed) {
        return Math.abs(difference) <= allowed * (1 + 1e-9);
    }
}
