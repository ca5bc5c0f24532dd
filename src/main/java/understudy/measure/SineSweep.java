package understudy.measure;

import understudy.refusal.Refused;

/**
 * An exponential sine sweep to send through a chain, and what comes back unravelled. Source: A. Farina, "Simultaneous
 * Measurement of Impulse Response and Distortion with a SweptCircuit-Sine Technique", AES 108th Convention (2000).
 *
 * <p>The phase at time t is 2 pi fromHz L (exp(t/L) - 1), L = seconds / ln(toHz/fromHz). What comes back is divided by what
 * was sent, in frequency (fades and ends are thus undone exactly, unlike with the reversed sweep); distortion of order k
 * then stands L ln k before the linear response.
 *
 * @param rateHz     frames a second
 * @param fromHz     above 0; well below the corner to be found, 1 Hz for corners of 3 Hz
 * @param toHz       above {@code fromHz}, at most 0.46 of the rate
 * @param seconds    of the sweep; at least 2 periods of {@code fromHz}
 * @param peakVolts  of the sine, above 0
 */
public record SineSweep(double rateHz, double fromHz, double toHz, double seconds, double peakVolts) {

    private static final double MOST_PART_OF_RATE = 0.46;
    /** Silence after the sweep: 12 time constants of the lowest corner, 3 Hz, and any usual latency. */
    public static final double TAIL_SECONDS = 1;
    /** At the ends, raised cosines: half a period of the lowest frequency, and a few hundred of the highest. */
    private static final double FADE_IN_PERIODS = 0.5;
    private static final double FADE_OUT_SECONDS = 0.02;

    public SineSweep {
        if (!(rateHz > 0 && fromHz > 0 && toHz > fromHz && toHz <= MOST_PART_OF_RATE * rateHz)) {
            throw new Refused("a sweep at a rate of " + SampleCheck.hz(rateHz)
                    + " runs from above 0 Hz up to at most "
                    + SampleCheck.hz(MOST_PART_OF_RATE * rateHz) + ", got " + SampleCheck.hz(fromHz) + " to "
                    + SampleCheck.hz(toHz), "");
        }
        if (!(seconds * fromHz >= 2 && seconds <= 120)) {
            throw new Refused("a sweep from " + SampleCheck.hz(fromHz) + " lasts from "
                    + SampleCheck.seconds(2 / fromHz) + " to 120 s, got " + SampleCheck.seconds(seconds), "");
        }
        if (!(peakVolts > 0 && peakVolts < Double.POSITIVE_INFINITY)) {
            throw new Refused("a sweep needs a peak above 0 V, got " + SampleCheck.volts(peakVolts), "");
        }
    }

    /** What suits an audio output: 1 Hz to 0.45 of the rate in 8 s. */
    public static SineSweep usual(double rateHz, double peakVolts) {
        return new SineSweep(rateHz, 1, 0.45 * rateHz, 8, peakVolts);
    }

    /** The sweep, then {@link #TAIL_SECONDS} of silence. The same samples on every machine. */
    public double[] samples() {
        int frames = sweepFrames();
        double[] samples = new double[frames + (int) Math.ceil(TAIL_SECONDS * rateHz)];
        double fadeIn = FADE_IN_PERIODS / fromHz * rateHz;
        double fadeOut = FADE_OUT_SECONDS * rateHz;
        for (int i = 0; i < frames; i++) {
            double grown = StrictMath.expm1(i / rateHz / growthSeconds());
            double turns = fromHz * growthSeconds() * grown;
            double fade = fade(i / fadeIn) * fade((frames - 1 - i) / fadeOut);
            samples[i] = peakVolts * fade * StrictMath.sin(2 * Math.PI * (turns - Math.floor(turns)));
        }
        return samples;
    }

    /** L: seconds in which the frequency grows e-fold. */
    double growthSeconds() {
        return seconds / StrictMath.log(toHz / fromHz);
    }

    int sweepFrames() {
        return (int) Math.ceil(seconds * rateHz);
    }

    private static double fade(double part) {
        return part >= 1 ? 1 : 0.5 - 0.5 * StrictMath.cos(Math.PI * part);
    }
}
