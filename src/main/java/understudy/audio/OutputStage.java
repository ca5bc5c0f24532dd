package understudy.audio;

import understudy.rig.OutputScale;

/**
 * The last step before samples become bytes, for device and file alike, and the one limiter that nothing can bypass:
 * volts, then fraction of full scale, then fade, then ceiling, then packing.
 *
 * <p>Not thread safe: it belongs to the thread that plays or writes. {@link #pack} allocates nothing and gives the same
 * bytes however the frames are cut into blocks.
 *
 * <p>A fade is half a cosine over 10 ms. A volt that is not a finite number trips the stage: from that frame on every
 * channel is silent for good. Line channels that the source does not have are silent.
 *
 * <p>Whole-number formats round to the nearest step. 16 bits get triangular dither of two steps peak to peak from a
 * fixed seed: without it rounding errors of a steady signal repeat every turn and add up to spectral lines; with it
 * they become plain noise, 93 dB below a full-scale sine, whose mean and power do not depend on the signal (Lipshitz,
 * Wannamaker, Vanderkooy, "Quantization and Dither: A Theoretical Survey", J. Audio Eng. Soc. 40, 1992). At 24 bits
 * and more a step is below any converter's own noise. Digital silence is never dithered.
 */
final class OutputStage {

    /** 10 ms: long enough not to click, short enough to count as stopping at once. */
    private static final double FADE_SECONDS = 0.010;

    /** Frames worked on at a time. */
    private static final int CHUNK_FRAMES = 512;

    /**
     * A hair above full scale, so that a sine of exactly full scale does not count as clipped for its last rounding.
     */
    private static final double CLIP_COUNTED_ABOVE = 1 + 0x1p-23;

    private final double fractionPerVolt;
    private final int sourceChannels;
    private final int lineChannels;
    private final SampleFormat format;
    private final boolean bigEndian;
    private final double[] fade;
    private final long[] ditherState;
    private final double[] fractions = new double[CHUNK_FRAMES];

    private int fadeAt;
    private int fadeStep;
    private long framesPacked;
    private long clippedSamples;
    private long trippedAtFrame = -1;
    private double blockPeak;
    private double peak;

    /**
     * @param sourceChannels channels of the volts to come, 1 or more
     * @param lineChannels   channels of each frame of bytes, at least {@code sourceChannels}
     * @param open           true: starts at full level, as for a file; false: starts silent, {@link #fadeIn} opens it
     */
    OutputStage(OutputScale scale, int sourceChannels, int lineChannels, SampleFormat format, boolean bigEndian,
            int rateHz, boolean open) {
        if (sourceChannels < 1 || lineChannels < sourceChannels) {
            throw new IllegalArgumentException(
                    "a line of " + lineChannels + " channels cannot carry " + sourceChannels + " signals");
        }
        this.fractionPerVolt = 1 / scale.fullScaleVolts();
        this.sourceChannels = sourceChannels;
        this.lineChannels = lineChannels;
        this.format = format;
        this.bigEndian = bigEndian;
        this.fade = fadeTable(rateHz);
        this.fadeAt = open ? fade.length - 1 : 0;
        this.ditherState = new long[lineChannels];
        for (int channel = 0; channel < lineChannels; channel++) {
            ditherState[channel] = channel * 0x632BE59BD9B4E019L;
        }
    }

    private static double[] fadeTable(int rateHz) {
        int steps = Math.max(1, (int) Math.round(FADE_SECONDS * rateHz));
        double[] table = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            table[i] = 0.5 - 0.5 * StrictMath.cos(StrictMath.PI * i / steps);
        }
        return table;
    }

    /** Frames that a whole fade takes. */
    int fadeFrames() {
        return fade.length - 1;
    }

    /** From the next frame on the level rises from where it is. */
    void fadeIn() {
        fadeStep = 1;
    }

    /** After a gap: from the next frame on the level rises from silence. A fade out goes on as it was. */
    void rampIn() {
        if (fadeStep >= 0) {
            fadeAt = 0;
            fadeStep = 1;
        }
    }

    /** From the next frame on the level falls from where it is, to silence. */
    void fadeOut() {
        fadeStep = -1;
    }

    /** True once nothing but zeros comes out, until the next {@link #fadeIn}; for good when tripped. */
    boolean silent() {
        return tripped() || fadeAt == 0 && fadeStep <= 0;
    }

    /** True after a volt that was not a finite number. */
    boolean tripped() {
        return trippedAtFrame >= 0;
    }

    /** The frame whose volts were not finite, counted from 0; -1 when there was none. */
    long trippedAtFrame() {
        return trippedAtFrame;
    }

    /** Samples that asked for more than full scale and were held there. */
    long clippedSamples() {
        return clippedSamples;
    }

    /** Largest fraction of full scale asked for in the last block, fade included. */
    double blockPeak() {
        return blockPeak;
    }

    /** Largest fraction of full scale asked for so far, fade included. */
    double peak() {
        return peak;
    }

    /** Bytes of one frame. */
    int frameBytes() {
        return lineChannels * format.bytes();
    }

    /**
     * Packs the first {@code frames} frames.
     *
     * @param volts one array a source channel
     * @param into  at least {@code frames * frameBytes()} long
     * @return bytes written
     */
    int pack(double[][] volts, int frames, byte[] into) {
        int sound = tripped() ? 0 : finiteFrames(volts, frames);
        if (sound < frames && !tripped()) {
            trippedAtFrame = framesPacked + sound;
        }
        int fadeStart = fadeAt;
        blockPeak = 0;
        for (int channel = 0; channel < sourceChannels; channel++) {
            fadeAt = fadeStart;
            packChannel(volts[channel], channel, sound, into);
        }
        for (int channel = 0; channel < lineChannels; channel++) {
            packSilence(channel, channel < sourceChannels ? sound : 0, frames, into);
        }
        peak = Math.max(peak, blockPeak);
        framesPacked += frames;
        return frames * frameBytes();
    }

    private int finiteFrames(double[][] volts, int frames) {
        int finite = frames;
        for (int channel = 0; channel < sourceChannels; channel++) {
            double[] signal = volts[channel];
            for (int i = 0; i < finite; i++) {
                if (!Double.isFinite(signal[i])) {
                    finite = i;
                }
            }
        }
        return finite;
    }

    private void packChannel(double[] volts, int channel, int frames, byte[] into) {
        for (int from = 0; from < frames; from += CHUNK_FRAMES) {
            int some = Math.min(CHUNK_FRAMES, frames - from);
            int audible = scale(volts, from, some);
            put(some, channel, audible, into, from * frameBytes() + channel * format.bytes());
        }
    }

    /**
     * Fractions of full scale, faded; counts what asks for more than full scale.
     *
     * @return frames before digital silence, which only comes at the end: a fade never leaves it within a call
     */
    private int scale(double[] volts, int from, int frames) {
        int top = fade.length - 1;
        double highest = blockPeak;
        int audible = 0;
        double gain = fractionPerVolt * fade[fadeAt];
        for (int i = 0; i < frames; i++) {
            if (fadeStep != 0) {
                fadeAt = Math.min(top, Math.max(0, fadeAt + fadeStep));
                gain = fractionPerVolt * fade[fadeAt];
            }
            if (gain != 0) {
                audible = i + 1;
            }
            double wanted = volts[from + i] * gain;
            fractions[i] = wanted;
            double size = Math.abs(wanted);
            if (size > highest) {
                highest = size;
            }
            if (size > CLIP_COUNTED_ABOVE) {
                clippedSamples++;
            }
        }
        blockPeak = highest;
        return audible;
    }

    /** Writes the scaled fractions as samples, one every frame from {@code at} on. */
    private void put(int frames, int channel, int audible, byte[] into, int at) {
        int stride = frameBytes();
        // the least significant byte of a sample comes first or last, the next one a step further
        int first = bigEndian ? at + format.bytes() - 1 : at;
        int step = bigEndian ? -1 : 1;
        // a loop a format: one loop with the choice inside takes three times as long
        switch (format) {
            case PCM16 -> {
                for (int i = 0, p = first; i < frames; i++, p += stride) {
                    int code = steps(fractions[i], 0x1p15, i < audible ? dither(channel) : 0);
                    into[p] = (byte) code;
                    into[p + step] = (byte) (code >> 8);
                }
            }
            case PCM24 -> {
                for (int i = 0, p = first; i < frames; i++, p += stride) {
                    int code = steps(fractions[i], 0x1p23, 0);
                    into[p] = (byte) code;
                    into[p + step] = (byte) (code >> 8);
                    into[p + 2 * step] = (byte) (code >> 16);
                }
            }
            case PCM24_IN_4 -> {
                for (int i = 0, p = first; i < frames; i++, p += stride) {
                    putFourBytes(into, p, step, steps(fractions[i], 0x1p23, 0));
                }
            }
            case PCM32 -> {
                for (int i = 0, p = first; i < frames; i++, p += stride) {
                    putFourBytes(into, p, step, steps(fractions[i], 0x1p31, 0));
                }
            }
            case FLOAT32 -> {
                for (int i = 0, p = first; i < frames; i++, p += stride) {
                    putFourBytes(into, p, step, Float.floatToRawIntBits((float) limited(fractions[i], 1)));
                }
            }
        }
    }

    private static void putFourBytes(byte[] into, int first, int step, int bits) {
        into[first] = (byte) bits;
        into[first + step] = (byte) (bits >> 8);
        into[first + 2 * step] = (byte) (bits >> 16);
        into[first + 3 * step] = (byte) (bits >> 24);
    }

    /** Rounds and limits symmetrically, so that a clipped signal has no mean of its own. */
    private static int steps(double wanted, double fullScaleSteps, double ditherSteps) {
        return (int) Math.rint(limited(wanted * fullScaleSteps + ditherSteps, fullScaleSteps - 1));
    }

    /** The hard ceiling. What is not a number never comes here. */
    private static double limited(double value, double limit) {
        return value > limit ? limit : value < -limit ? -limit : value;
    }

    /** The difference of two even draws: triangular over -1 to 1 step (SplitMix64; Steele, Lea, Flood, OOPSLA 2014). */
    private double dither(int channel) {
        long z = ditherState[channel] += 0x9E3779B97F4A7C15L;
        z = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
        z = (z ^ z >>> 27) * 0x94D049BB133111EBL;
        z ^= z >>> 31;
        return ((z >>> 32) - (z & 0xFFFFFFFFL)) * 0x1p-32;
    }

    private void packSilence(int channel, int from, int to, byte[] into) {
        int bytes = format.bytes();
        for (int i = from; i < to; i++) {
            int at = i * frameBytes() + channel * bytes;
            for (int b = 0; b < bytes; b++) {
                into[at + b] = 0;
            }
        }
    }
}
