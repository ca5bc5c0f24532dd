package understudy.measure;

import java.util.Arrays;
import understudy.refusal.Refused;

/**
 * The two states of a two-level signal (IEC 60469:2013, IEEE Std 181-2011, algorithms for state levels): samples are
 * split at the middle of their range, and each half's level is its shorth, the mean of the shortest interval that holds
 * half of its samples. Halving goes on while it shrinks the interval to less than a quarter: then it sheds the tails of
 * edges; in noise, which shrinks by half, it stops. Exact to 1e-9 of the amplitude where a quarter of the time is spent
 * at rest; pulses that never come to rest need levels given from elsewhere.
 *
 * @param lowVolts  of the lower state
 * @param highVolts of the upper state
 */
public record StateLevels(double lowVolts, double highVolts) {

    private static final double GAIN = 0.25;

    public StateLevels {
        if (!(lowVolts < highVolts)) {
            throw new Refused("two states need a low level below the high one, got " + SampleCheck.volts(lowVolts)
                    + " and " + SampleCheck.volts(highVolts), "check that there is a signal");
        }
    }

    /** @throws Refused if the signal never moves */
    public static StateLevels of(double[] volts) {
        if (volts.length == 0) {
            throw new Refused("state levels need samples, got none", "record longer");
        }
        double[] sorted = volts.clone();
        Arrays.sort(sorted);
        double split = (sorted[0] + sorted[sorted.length - 1]) / 2;
        int above = 0;
        while (above < sorted.length && sorted[above] <= split) {
            above++;
        }
        if (above == sorted.length) {
            throw new Refused("this recording stays at " + SampleCheck.volts(sorted[0]), "check that there is a signal");
        }
        return new StateLevels(shorth(sorted, 0, above), shorth(sorted, above, sorted.length));
    }

    /** From low to high state: the amplitude of IEC 60469. */
    public double amplitudeVolts() {
        return highVolts - lowVolts;
    }

    /** The level at some part of the way from low (0) to high (1). */
    public double at(double part) {
        return lowVolts + part * amplitudeVolts();
    }

    private static double shorth(double[] sorted, int from, int to) {
        int start = from;
        int count = to - from;
        double width = Double.POSITIVE_INFINITY;
        while (count > 1) {
            int half = (count + 1) / 2;
            int best = start;
            for (int i = start; i + half <= start + count; i++) {
                best = sorted[i + half - 1] - sorted[i] < sorted[best + half - 1] - sorted[best] ? i : best;
            }
            double halfWidth = sorted[best + half - 1] - sorted[best];
            if (!(halfWidth < GAIN * width)) {
                break;
            }
            start = best;
            count = half;
            width = halfWidth;
        }
        return Arrays.stream(sorted, start, start + count).average().orElseThrow();
    }
}
