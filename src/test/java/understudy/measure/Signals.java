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
}
