package understudy.measure;

import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/** What every measurement asks of its samples, and how the numbers of a refusal are written. */
final class SampleCheck {

    private SampleCheck() {}

    /** A frequency for people, "997 Hz"; likewise times and voltages. */
    static String hz(double value) {
        return said(value, Unit.HERTZ);
    }

    static String seconds(double value) {
        return said(value, Unit.SECOND);
    }

    static String volts(double value) {
        return said(value, Unit.VOLT);
    }

    private static String said(double value, Unit unit) {
        boolean absurd = value != 0 && !(Math.abs(value) > 1e-15 && Math.abs(value) < 1e15); // what a quantity can't say
        return absurd ? value + " " + unit.symbol() : new Quantity(value, unit).rounded(4);
    }

    /** Refuses samples that no measurement can use: too few, none at a time, or not numbers. */
    static void check(double[] volts, double rateHz, int atLeastFrames, String purpose) {
        if (!(rateHz > 0) || Double.isInfinite(rateHz)) {
            throw new Refused(purpose + " needs a sample rate above 0 Hz, got " + hz(rateHz), "");
        }
        if (volts.length < atLeastFrames) {
            throw new Refused(purpose + " needs at least " + atLeastFrames + " samples, got " + volts.length,
                    "record longer");
        }
        for (int i = 0; i < volts.length; i++) {
            if (!Double.isFinite(volts[i])) {
                throw new Refused(purpose + " needs numbers, but sample " + i + " is " + volts[i],
                        "record again");
            }
        }
    }
}
