package understudy.measure;

import java.util.ArrayList;
import java.util.List;
import understudy.refusal.Refused;

/**
 * The power spectrum of a recording, seen through a window with side lobes below -180 dB ({@link CosineWindow}).
 *
 * <p>Every bin holds mean square volts, scaled so that sums are true: over the main lobe of a tone of amplitude A they
 * give A^2/2 wherever between the bins it lies (Parseval), over a band of noise its variance. The lowest 8 bins belong
 * to the steady offset and count nowhere. At least {@value #LEAST_FRAMES} samples; up to 6 % at the end go unused, to
 * keep the transform quick.
 */
public final class Spectrum {
    static final int LEAST_FRAMES = 256;
    private static final int LOBE = CosineWindow.LOBE_BINS;

    private final double[] meanSquares;
    private final double binHz;

    /**
     * A line in the spectrum.
     *
     * @param frequencyHz     centre of its lobe, good to about 1e-6 of a bin when no noise disturbs it
     * @param amplitudeVolts  peak, not rms
     */
    public record Peak(double frequencyHz, double amplitudeVolts) {}

    private Spectrum(double[] meanSquares, double binHz) {
        this.meanSquares = meanSquares;
        this.binHz = binHz;
    }

    /**
     * @param volts  the recording
     * @param rateHz frames a second
     * @throws Refused if it is too short or holds what is no number
     */
    public static Spectrum of(double[] volts, double rateHz) {
        SampleCheck.check(volts, rateHz, LEAST_FRAMES, "a spectrum");
        int length = Fourier.lengthWithin(volts.length);
        double[] data = CosineWindow.applied(volts, length);
        Fourier.forward(data);
        double scale = 2 / (length * CosineWindow.energy(length));
        double[] meanSquares = new double[length / 2 + 1];
        meanSquares[0] = data[0] * data[0] * scale / 2;
        meanSquares[length / 2] = data[1] * data[1] * scale / 2;
        for (int k = 1; k < length / 2; k++) {
            meanSquares[k] = (data[2 * k] * data[2 * k] + data[2 * k + 1] * data[2 * k + 1]) * scale;
        }
        return new Spectrum(meanSquares, rateHz / length);
    }

    /** Number of bins, from 0 Hz to half the sample rate. */
    public int bins() {
        return meanSquares.length;
    }

    /** Distance of neighbouring bins. */
    public double binHz() {
        return binHz;
    }

    /** What one bin holds: rms volts, for plots. */
    public double rmsVolts(int bin) {
        return Math.sqrt(meanSquares[bin]);
    }

    /** Rms volts of all there is in a band, both ends included, offset excluded. */
    public double bandRmsVolts(double fromHz, double toHz) {
        return Math.sqrt(sum(Math.max(LOBE, bin(fromHz)), bin(toHz)));
    }

    /** The strongest lines, strongest first; none nearer to another than a lobe. */
    public List<Peak> peaks(int most) {
        List<Peak> peaks = new ArrayList<>();
        boolean[] taken = new boolean[bins()];
        while (peaks.size() < most) {
            int top = largest(LOBE, bins() - 1, taken);
            if (top < 0) {
                break;
            }
            peaks.add(peak(top));
            take(top, taken);
        }
        return peaks;
    }

    /**
     * The largest component at or below {@code upToHz} that is no harmonic of {@code fundamentalHz}. Each harmonic
     * covers 9 bins to either side, so the record must last 24 periods of the fundamental, and the fundamental must be
     * known to a bin divided by the highest harmonic's number.
     *
     * @throws Refused if the record is too short to tell harmonics from what lies between them
     */
    public Peak largestNotHarmonic(double fundamentalHz, double upToHz) {
        if (!(fundamentalHz >= 24 * binHz)) {
            throw new Refused("components between harmonics of " + SampleCheck.hz(fundamentalHz)
                    + " show only in a recording of at least " + SampleCheck.seconds(24 / fundamentalHz) + ", got "
                    + SampleCheck.seconds(1 / binHz), "record longer");
        }
        boolean[] taken = new boolean[bins()];
        double perHarmonic = fundamentalHz / binHz;
        for (int k = 0; k < bins(); k++) {
            double away = Math.abs(k - Math.rint(k / perHarmonic) * perHarmonic);
            taken[k] = away <= LOBE + 1;
        }
        int top = largest(LOBE, bin(upToHz), taken);
        if (top < 0) {
            throw new Refused("nothing lies between the offset and " + SampleCheck.hz(upToHz), "allow a higher limit");
        }
        double sum = 0;
        for (int k = Math.max(0, top - LOBE); k <= Math.min(bins() - 1, top + LOBE); k++) {
            sum += taken[k] ? 0 : meanSquares[k];
        }
        return new Peak(top * binHz, Math.sqrt(2 * sum));
    }

    /** The line around a bin: all of its lobe. */
    Peak peak(int top) {
        double sum = 0;
        double moment = 0;
        for (int k = Math.max(0, top - LOBE); k <= Math.min(bins() - 1, top + LOBE); k++) {
            sum += meanSquares[k];
            moment += (k - top) * meanSquares[k];
        }
        // the lobe's centre of gravity is the tone's place: the window is smooth at its ends
        return new Peak(sum == 0 ? top * binHz : (top + moment / sum) * binHz, Math.sqrt(2 * sum));
    }

    /** The strongest bin from {@code from} to {@code to} that isn't taken, or -1. */
    int largest(int from, int to, boolean[] taken) {
        int top = -1;
        for (int k = from; k <= to; k++) {
            if (!taken[k] && (top < 0 || meanSquares[k] > meanSquares[top])) {
                top = k;
            }
        }
        return top;
    }

    /** Marks a lobe as spoken for and returns the mean square volts that it held. */
    double take(int top, boolean[] taken) {
        double sum = 0;
        for (int k = Math.max(0, top - LOBE); k <= Math.min(bins() - 1, top + LOBE); k++) {
            sum += taken[k] ? 0 : meanSquares[k];
            taken[k] = true;
        }
        return sum;
    }

    double sum(int from, int to) {
        double sum = 0;
        for (int k = from; k <= to; k++) {
            sum += meanSquares[k];
        }
        return sum;
    }

    /** The bin nearest to a frequency, held within the spectrum. */
    int bin(double hz) {
        return (int) Math.max(0, Math.min(bins() - 1, Math.rint(hz / binHz)));
    }

    double meanSquare(int bin) {
        return meanSquares[bin];
    }
}
