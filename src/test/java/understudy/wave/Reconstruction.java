package understudy.wave;

/**
 * Ideal reconstruction between samples, independent of the code under test: a sinc cut by a Kaiser window.
 *
 * <p>Half-length 400 frames, beta 16: side lobes below -150 dB, and all but the last 1.3 % of the band passes whole
 * (transition half-width about beta / (2 pi half-length) cycles a frame, 0.0064 of 0.5).
 */
final class Reconstruction {
    private static final int HALF = 400;
    private static final double BETA = 16;

    /** The window over the square of the distance; linear between entries, within 1e-8 of itself. */
    private static final double[] WINDOW = new double[65_538];

    static {
        for (int i = 0; i < WINDOW.length; i++) {
            WINDOW[i] = bessel(BETA * Math.sqrt(Math.max(0, 1 - i / 65_536.0))) / bessel(BETA);
        }
    }

    private final double[] samples;

    Reconstruction(double[] samples) {
        this.samples = samples;
    }

    double at(double frame) {
        int centre = (int) Math.floor(frame);
        if (frame == centre) {
            return samples[centre];
        }
        double sum = 0;
        double sine = Math.sin(Math.PI * (frame - centre)) / Math.PI;
        for (int n = centre - HALF + 1; n <= centre + HALF; n++) {
            if (n < 0 || n >= samples.length) {
                continue;
            }
            double x = frame - n;
            double sign = ((n - centre) & 1) == 0 ? 1 : -1;
            double r = x / HALF;
            sum += samples[n] * sign * sine / x * window(r * r);
        }
        return sum;
    }

    /** The instant within {@code reach} frames of {@code guess} at which the signal crosses {@code level}. */
    double crossing(double guess, double level, double reach) {
        double low = guess - reach;
        double high = guess + reach;
        double atLow = at(low) - level;
        double atHigh = at(high) - level;
        if (atLow * atHigh > 0) {
            throw new AssertionError("no crossing of " + level + " near frame " + guess);
        }
        // regula falsi (Illinois): a few steps, each a full reconstruction
        for (int i = 0; i < 60; i++) {
            double middle = high - atHigh * (high - low) / (atHigh - atLow);
            double here = at(middle) - level;
            if (Math.abs(here) < 1e-15 || Math.abs(high - low) < 1e-12) {
                return middle;
            }
            if (here * atHigh < 0) {
                low = high;
                atLow = atHigh;
            } else {
                atLow /= 2;
            }
            high = middle;
            atHigh = here;
        }
        return high;
    }

    private static double window(double square) {
        double place = Math.min(1, square) * 65_536;
        int i = (int) place;
        return WINDOW[i] + (place - i) * (WINDOW[i + 1] - WINDOW[i]);
    }

    /** The modified Bessel function of order 0, by its series. */
    private static double bessel(double x) {
        double sum = 1;
        double term = 1;
        for (int k = 1; term > sum * 1e-17; k++) {
            term *= (x / (2 * k)) * (x / (2 * k));
            sum += term;
        }
        return sum;
    }
}
