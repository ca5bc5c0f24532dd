package understudy.wave;

/**
 * The Gaussian that smooths every edge, and its integrals, from tables with cubic Hermite interpolation.
 *
 * <p>A table step of h leaves at most h^4/384 times the fourth derivative (below 1.4 here): 2.2e-10 for h = 1/64,
 * a thousandth of a 24-bit step. Built from the all-positive series of G. Marsaglia, "Evaluating the Normal
 * Distribution", Journal of Statistical Software 11 (2004), with StrictMath, so the same on every machine.
 */
final class Gaussian {
    /**
     * Standard deviation of the edge kernel, in frames. It leaves exp(-(pi sigma)^2 / 2), -96 dB, at the Nyquist
     * frequency, and has no overshoot.
     */
    static final double SIGMA_FRAMES = 1.5;
    /** Beyond this many standard deviations the step is over: what is cut off, 1e-9, is below a 24-bit step. */
    static final double REACH = 6;
    /** The reach of the edge kernel in frames. */
    static final double REACH_FRAMES = REACH * SIGMA_FRAMES;
    /** Density at the middle, 1 / sqrt(2 pi). */
    static final double PEAK = 1 / Math.sqrt(2 * Math.PI);

    private static final int PER_UNIT = 64;
    private static final double H = 1.0 / PER_UNIT;
    private static final int LAST = 2 * (int) REACH * PER_UNIT;
    /** One entry more than the reach: the last double below it may round up to it. */
    private static final double[] DENSITY = new double[LAST + 2];
    private static final double[] STEP = new double[LAST + 2];

    static {
        for (int i = 0; i < DENSITY.length; i++) {
            double u = i * H - REACH;
            DENSITY[i] = PEAK * StrictMath.exp(-0.5 * u * u);
            STEP[i] = u <= 0 ? upperTail(-u, DENSITY[i]) : 1 - upperTail(u, DENSITY[i]);
        }
    }

    private Gaussian() {}

    /** 1 - Phi(u) for u of 0 or more. */
    private static double upperTail(double u, double density) {
        if (u < 3) {
            double term = u;
            double sum = u;
            for (int k = 3; sum + term != sum; k += 2) {
                term *= u * u / k;
                sum += term;
            }
            return 0.5 - density * sum;
        }
        // Laplace's continued fraction, where the series would cancel
        double fraction = u;
        for (int k = 60; k > 0; k--) {
            fraction = u + k / fraction;
        }
        return density / fraction;
    }

    /** The smoothed step Phi(u): 0 well before, 1/2 at 0, 1 well after. */
    static double step(double u) {
        if (u <= -REACH) {
            return 0;
        }
        if (u >= REACH) {
            return 1;
        }
        double x = (u + REACH) * PER_UNIT;
        int i = (int) x;
        double f = x - i;
        return between(STEP[i], STEP[i + 1], H * DENSITY[i], H * DENSITY[i + 1], f);
    }

    /** The bell phi(u), of area 1. */
    static double density(double u) {
        if (!(u > -REACH && u < REACH)) {
            return 0;
        }
        double x = (u + REACH) * PER_UNIT;
        int i = (int) x;
        double f = x - i;
        double here = i * H - REACH;
        return between(DENSITY[i], DENSITY[i + 1], -H * here * DENSITY[i], -H * (here + H) * DENSITY[i + 1], f);
    }

    /** Cubic Hermite: values a and b, slopes da and db (times the table's step), at the part f of the way. */
    private static double between(double a, double b, double da, double db, double f) {
        double rise = b - a;
        return a + f * (da + f * (3 * rise - 2 * da - db + f * (da + db - 2 * rise)));
    }

    /** What smoothing adds to a corner of slope 1 at distance u: the integral of the step, less max(u, 0). */
    static double corner(double u) {
        double away = Math.abs(u);
        return density(u) - away * step(-away);
    }
}
