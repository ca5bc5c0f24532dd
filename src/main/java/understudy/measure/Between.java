package understudy.measure;

/**
 * What a recording says between its samples: band-limited reconstruction by a sinc under a Kaiser window (J. F. Kaiser,
 * R. W. Schafer, "On the Use of the I0-sinh Window for Spectrum Analysis", IEEE Trans. ASSP 28, 1980).
 *
 * <p>Half-length {@value #HALF} frames, beta 14: what is below 0.491 of the sample rate comes back within 1e-7 of its
 * size. Beyond the ends the first and the last sample are taken to go on, so readings nearer to an end than the
 * half-length are approximate.
 */
final class Between {
    static final int HALF = 256;
    private static final double BETA = 14;
    /** A cubic through window values 1/8 frame apart is off by (1/8 / 68)^4, 1e-11: the window bends over 68 frames. */
    private static final int PER_FRAME = 8;
    private static final double[] WINDOW = new double[HALF * PER_FRAME + 4];
    private static final int MOST_STEPS = 60;
    /** 2e-14 s at 48 kHz; the last step is far larger than what it leaves. */
    private static final double SETTLED_FRAMES = 1e-9;

    static {
        // one entry before distance 0 and a few beyond the end, so that the cubic always finds its neighbours
        for (int j = 0; j < WINDOW.length; j++) {
            double r = (j - 1.0) / (HALF * PER_FRAME);
            WINDOW[j] = bessel(BETA * Math.sqrt(Math.max(0, 1 - r * r))) / bessel(BETA);
        }
    }

    private final double[] samples;

    Between(double[] samples) {
        this.samples = samples;
    }

    /** The signal at a frame, whole or not. */
    double at(double frame) {
        int centre = (int) Math.floor(frame);
        double part = frame - centre;
        if (part == 0) {
            return samples[centre];
        }
        double sum = side(centre, -1, part) + side(centre + 1, 1, 1 - part);
        return sum * Math.sin(Math.PI * part) / Math.PI;
    }

    /** Samples from {@code first} on to one side, the nearest {@code distance} away: window over distance, alternating. */
    private double side(int first, int step, double distance) {
        double place = distance * PER_FRAME;
        int entry = (int) place;
        double u = place - entry;
        // Lagrange's cubic through entries at -1, 0, 1, 2; the same for every sample, since they are whole frames apart
        double a = -u * (u - 1) * (u - 2) / 6;
        double b = (u + 1) * (u - 1) * (u - 2) / 2;
        double c = -(u + 1) * u * (u - 2) / 2;
        double d = (u + 1) * u * (u - 1) / 6;
        double sum = 0;
        double sign = 1;
        int last = samples.length - 1;
        for (int k = 0; k < HALF; k++) {
            int at = Math.max(0, Math.min(last, first + step * k));
            double window = a * WINDOW[entry] + b * WINDOW[entry + 1] + c * WINDOW[entry + 2] + d * WINDOW[entry + 3];
            sum += sign * samples[at] * window / (distance + k);
            sign = -sign;
            entry += PER_FRAME;
        }
        return sum;
    }

    /** Where between frame i and the next the signal passes a level that lies between these two samples. */
    double crossing(int i, double level) {
        double low = i;
        double high = i + 1;
        double atLow = samples[i] - level;
        double atHigh = samples[i + 1] - level;
        // regula falsi (Illinois): brackets the crossing and closes in faster than linearly
        for (int step = 0; step < MOST_STEPS && atHigh != 0; step++) {
            double next = high - atHigh * (high - low) / (atHigh - atLow);
            if (Math.abs(next - high) < SETTLED_FRAMES) {
                return next;
            }
            double atNext = at(next) - level;
            if (atNext * atHigh < 0) {
                low = high;
                atLow = atHigh;
            } else {
                atLow /= 2;
            }
            high = next;
            atHigh = atNext;
        }
        return high;
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
