package understudy.measure;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/** Test signals in closed form, made without the code under test. */
final class Signals {
    static final double RATE_HZ = 48_000;

    private Signals() {}

    /** One sample a frame of a function of seconds. */
    static double[] sampled(int frames, DoubleUnaryOperator volts) {
        double[] samples = new double[frames];
        for (int i = 0; i < frames; i++) {
            samples[i] = volts.applyAsDouble(i / RATE_HZ);
        }
        return samples;
    }

    static double[] withNoise(double[] samples, double rmsVolts, long seed) {
        Random random = new Random(seed);
        double[] noisy = samples.clone();
        for (int i = 0; i < noisy.length; i++) {
            noisy[i] += rmsVolts * random.nextGaussian();
        }
        return noisy;
    }

    /** Rounded to so many bits of a range from -1 V to 1 V. */
    static double[] rounded(double[] samples, int bits) {
        double step = Math.pow(2, 1 - bits);
        double[] rounded = new double[samples.length];
        for (int i = 0; i < samples.length; i++) {
            rounded[i] = Math.rint(samples[i] / step) * step;
        }
        return rounded;
    }

    /**
     * Steps between two levels, up first, each smoothed by a Gaussian of {@code sigmaFrames}: the integral in closed
     * form. It crosses the middle exactly at each instant that has no other within some 12 sigma.
     */
    static double[] steps(int frames, double[] atFrames, double low, double high, double sigmaFrames) {
        double[] samples = new double[frames];
        int done = 0; // steps that are over for good
        for (int i = 0; i < frames; i++) {
            while (done < atFrames.length && atFrames[done] < i - 9 * sigmaFrames) {
                done++;
            }
            double level = done % 2;
            for (int k = done; k < atFrames.length && atFrames[k] < i + 9 * sigmaFrames; k++) {
                level += (k % 2 == 0 ? 1 : -1) * normal((i - atFrames[k]) / sigmaFrames);
            }
            samples[i] = low + (high - low) * level;
        }
        return samples;
    }

    /** The Gaussian's integral: its power series, or Laplace's continued fraction in the tails. */
    static double normal(double u) {
        double away = Math.abs(u);
        double density = Math.exp(-0.5 * u * u) / Math.sqrt(2 * Math.PI);
        double tail;
        if (away < 3) {
            double term = away;
            double sum = away;
            for (int k = 3; sum + term != sum; k += 2) {
                term *= away * away / k;
                sum += term;
            }
            tail = 0.5 - density * sum;
        } else {
            double fraction = away;
            for (int k = 80; k > 0; k--) {
                fraction = away + k / fraction;
            }
            tail = density / fraction;
        }
        return u > 0 ? 1 - tail : tail;
    }
}
