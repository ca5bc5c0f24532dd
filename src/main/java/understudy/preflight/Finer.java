package understudy.preflight;

/**
 * Samples set closer by a whole factor, as an audio output's own filter would: band-limited, by a sinc under a Kaiser
 * window (J. F. Kaiser, R. W. Schafer, "On the Use of the I0-sinh Window for Spectrum Analysis", IEEE Trans. ASSP 28,
 * 1980).
 *
 * <p>Half-length {@value #HALF} frames, beta 9: 90 dB, with a transition of 0.06 of the rate to either side of half the
 * rate. There the renderer's own edges have fallen to exp(-(2 pi 0.44 1.5)^2 / 2), -75 dB of a step's spectrum.
 */
final class Finer {
    static final int HALF = 24;
    private static final double BETA = 9;

    private final int factor;
    private final double[][] taps;

    Finer(int factor) {
        this.factor = factor;
        this.taps = new double[factor][2 * HALF];
        for (int phase = 1; phase < factor; phase++) {
            double part = (double) phase / factor;
            double sum = 0;
            for (int k = 0; k < 2 * HALF; k++) {
                double away = k - HALF + 1 - part;
                double r = away / HALF;
                double window = bessel(BETA * Math.sqrt(Math.max(0, 1 - r * r)));
                taps[phase][k] = Math.sin(Math.PI * away) / (Math.PI * away) * window;
                sum += taps[phase][k];
            }
            for (int k = 0; k < 2 * HALF; k++) {
                taps[phase][k] /= sum; // a steady voltage stays what it is
            }
        }
    }

    /** The values at {@code first, first + 1/factor, ...} up to the whole frame {@code last}; ends are taken to go on. */
    double[] between(double[] samples, int first, int last) {
        double[] fine = new double[(last - first) * factor + 1];
        for (int i = first; i <= last; i++) {
            int at = (i - first) * factor;
            fine[at] = samples[i];
            for (int phase = 1; phase < factor && i < last; phase++) {
                fine[at + phase] = value(samples, i, taps[phase]);
            }
        }
        return fine;
    }

    private static double value(double[] samples, int frame, double[] weights) {
        int from = frame - HALF + 1;
        double sum = 0;
        if (from >= 0 && from + weights.length <= samples.length) {
            for (int k = 0; k < weights.length; k++) {
                sum += weights[k] * samples[from + k];
            }
            return sum;
        }
        for (int k = 0; k < weights.length; k++) {
            sum += weights[k] * samples[Math.max(0, Math.min(samples.length - 1, from + k))];
        }
        return sum;
    }

    /** The modified Bessel function of order 0, by its series. */
    private static double bessel(double x) {
        double sum = 1;
        double term = 1;
        for (int k = 1; term > sum * 1e-17; k++) {
            term *= x / (2 * k) * (x / (2 * k));
            sum += term;
        }
        return sum;
    }
}
