package understudy.measure;

/** Samples that can't be measured as asked: what was given, what is needed, what to do. Remedy: mend the input. */
public final class MeasureException extends IllegalArgumentException {

    MeasureException(String message) {
        super(message);
    }

    /** Refuses samples that no measurement can use: too few, none at a time, or not numbers. */
    static void check(double[] volts, double rateHz, int atLeastFrames, String purpose) {
        if (!(rateHz > 0) || Double.isInfinite(rateHz)) {
            throw new MeasureException(purpose + " needs a sample rate above 0 Hz, got " + rateHz + " Hz");
        }
        if (volts.length < atLeastFrames) {
            throw new MeasureException(purpose + " needs at least " + atLeastFrames + " samples, got " + volts.length
                    + "; record longer");
        }
        for (int i = 0; i < volts.length; i++) {
            if (!Double.isFinite(volts[i])) {
                throw new MeasureException(purpose + " needs numbers, but sample " + i + " is " + volts[i]
                        + "; record again");
            }
        }
    }
}
