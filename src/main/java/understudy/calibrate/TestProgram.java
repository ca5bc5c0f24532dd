package understudy.calibrate;

import understudy.measure.SineSweep;

/**
 * What is played through the patch cable, in order: silence, three positive pulses, a sweep with its tail, a tone, the
 * same tone 20 dB down, a tone just below half the rate, silence. Samples are fractions of full scale.
 *
 * <p>Silence shows what others mix in, pulses the polarity, the sweep the response and distortion, the tones the clock,
 * noise, and whether the level is left alone; the highest one whether the samples take a way through a lower rate.
 *
 * @param rateHz frames a second, 8000 or more
 * @param level  peak of everything but the quiet tones, fraction of full scale, 0.01 to 1
 */
public record TestProgram(int rateHz, double level) {

    /** Prime, so that it is no multiple of a mains frequency and beats with no round sample rate. */
    public static final double TONE_HZ = 997;
    /** How much weaker the second tone is: 20 dB. */
    public static final double QUIET_PART = 0.1;
    /**
     * Of the rate: converters with sharp filters let it pass, with slow ones weaken it by 4 dB; what was computed anew for
     * 44 100 Hz out of 48 000 Hz has lost it, since 0.455 x 48 kHz is 0.495 x 44.1 kHz, within the end of any filter.
     */
    private static final double HIGH_PART_OF_RATE = 0.455;
    static final int PULSES = 3;
    static final double PULSE_SECONDS = 0.002;
    static final double PULSES_APART_SECONDS = 0.1;

    private static final double SILENCE_SECONDS = 0.5;
    private static final double PULSES_SECONDS = 0.5;
    private static final double TONE_SECONDS = 2;
    private static final double QUIET_TONE_SECONDS = 1;
    private static final double HIGH_TONE_SECONDS = 0.5;
    private static final double FADE_SECONDS = 0.01;

    public TestProgram {
        if (!(rateHz >= 8000 && level >= 0.01 && level <= 1)) {
            throw new IllegalArgumentException("a test at " + rateHz + " Hz and a level of " + level);
        }
    }

    /** The sweep in it; its volts are fractions of full scale. */
    public SineSweep sweep() {
        return SineSweep.usual(rateHz, level);
    }

    int pulsesAt() {
        return frames(SILENCE_SECONDS);
    }

    int sweepAt() {
        return pulsesAt() + frames(PULSES_SECONDS);
    }

    int toneAt() {
        return sweepAt() + frames(sweep().seconds() + SineSweep.TAIL_SECONDS);
    }

    int quietToneAt() {
        return toneAt() + frames(TONE_SECONDS);
    }

    int highToneAt() {
        return quietToneAt() + frames(QUIET_TONE_SECONDS);
    }

    int silenceAt() {
        return highToneAt() + frames(HIGH_TONE_SECONDS);
    }

    double highToneHz() {
        return HIGH_PART_OF_RATE * rateHz;
    }

    /** Of all of it. */
    public int frames() {
        return silenceAt() + frames(SILENCE_SECONDS);
    }

    /** Until the last tone ends. */
    double soundSeconds() {
        return (double) silenceAt() / rateHz;
    }

    int frames(double seconds) {
        return (int) Math.ceil(seconds * rateHz);
    }

    /** One channel; the same on every machine. */
    public double[] samples() {
        double[] samples = new double[frames()];
        int pulse = frames(PULSE_SECONDS);
        for (int k = 0; k < PULSES; k++) {
            int at = pulsesAt() + k * frames(PULSES_APART_SECONDS);
            for (int i = 0; i < pulse; i++) {
                samples[at + i] = level * (0.5 - 0.5 * StrictMath.cos(2 * StrictMath.PI * i / pulse));
            }
        }
        double[] swept = sweep().samples();
        System.arraycopy(swept, 0, samples, sweepAt(), Math.min(swept.length, toneAt() - sweepAt()));
        addTone(samples, toneAt(), quietToneAt(), TONE_HZ, level);
        addTone(samples, quietToneAt(), highToneAt(), TONE_HZ, level * QUIET_PART);
        addTone(samples, highToneAt(), silenceAt(), highToneHz(), level * QUIET_PART);
        return samples;
    }

    private void addTone(double[] samples, int from, int to, double hz, double peak) {
        double fade = FADE_SECONDS * rateHz;
        for (int i = from; i < to; i++) {
            double part = Math.min(1, Math.min(i - from, to - 1 - i) / fade);
            double turns = hz * (i - from) / rateHz;
            samples[i] = peak * (0.5 - 0.5 * StrictMath.cos(StrictMath.PI * part))
                    * StrictMath.sin(2 * StrictMath.PI * (turns - StrictMath.floor(turns)));
        }
    }
}
