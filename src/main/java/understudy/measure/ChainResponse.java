package understudy.measure;

import java.util.Arrays;
import understudy.refusal.Refused;

/**
 * What a chain (output, cable, input) does to a signal, found from a recorded {@link SineSweep}.
 *
 * <p>Gain, corner and latency are fitted to a band that converters' filters leave alone, from the sweep's start to a
 * fifth of the rate. Magnitude and phase come from the linear response itself, cut out in time so that distortion and
 * late noise fall away; so do the responses of the harmonics.
 */
public final class ChainResponse {
    /** Up to here converters are flat even with slow filters. */
    private static final double FIT_PART_OF_RATE = 0.2;
    /** Lines this much weaker than the sweep's own were not sent; what was is told within FLOOR^2, 0.0001 dB. */
    private static final double FLOOR = 0.003;
    /** The top of the sweep, where it fades out, is faded out here too. */
    private static final double TOLD_PART = 0.95;
    /** Peak over rms of an impulse response: noise of a million samples has 5 or 6, a chain hundreds. */
    private static final double LOUD = 20;

    private static final int FRAMES_PER_TURN_SET = 512;

    private final SineSweep sweep;
    private final ChainFit fit;
    private final double noiseRmsVolts;
    /** Impulse response, its peak at index 0; what comes before stands at the end. */
    private final double[] impulse;
    private final int peakFrame;

    private ChainResponse(SineSweep sweep, ChainFit fit, double noiseRmsVolts, double[] impulse, int peakFrame) {
        this.sweep = sweep;
        this.fit = fit;
        this.noiseRmsVolts = noiseRmsVolts;
        this.impulse = impulse;
        this.peakFrame = peakFrame;
    }

    /**
     * @param sweep    what was played
     * @param recorded what came back, begun when the sweep began (earlier counts as latency), to the end of its tail
     * @throws Refused if it ends before the sweep has come through, or if no sweep is in it
     */
    public static ChainResponse of(SineSweep sweep, double[] recorded) {
        double[] played = sweep.samples();
        SampleCheck.check(recorded, sweep.rateHz(), 1, "a response measurement");
        if (recorded.length < sweep.sweepFrames()) {
            throw new Refused("the recording ends early: "
                    + SampleCheck.seconds(recorded.length / sweep.rateHz()) + " of "
                    + SampleCheck.seconds(played.length / sweep.rateHz()), "record until the sweep and its tail are over");
        }
        int length = Fourier.lengthFrom(recorded.length + played.length);
        double[] sent = Arrays.copyOf(played, length);
        double[] received = Arrays.copyOf(recorded, length);
        Fourier.forward(sent);
        Fourier.forward(received);
        double binHz = sweep.rateHz() / length;
        double[] impulse = divided(received, sent, sweep, binHz);
        Fourier.inverse(impulse);
        int peak = largest(impulse);
        double loudness = Math.abs(impulse[peak]) / rms(impulse);
        if (!(loudness > LOUD)) {
            throw new Refused("no sweep comes back in this recording", "check that the cable runs from this output"
                    + " to this input, and the recording level");
        }
        int peakFrame = peak > length / 2 ? peak - length : peak;
        ChainFit fit = ChainFit.of(sent, received, binHz, sweep.fromHz(),
                Math.min(sweep.toHz(), FIT_PART_OF_RATE * sweep.rateHz()), peakFrame / sweep.rateHz());
        double noise = rms(Arrays.copyOfRange(recorded, quietFrom(sweep, fit, recorded.length), recorded.length));
        return new ChainResponse(sweep, fit, noise, rotated(impulse, peak), peakFrame);
    }

    /** Output volts over input volts above the corner, polarity apart. */
    public double gain() {
        return Math.abs(fit.gain());
    }

    /** The same in decibels. */
    public double gainDb() {
        return 20 * Math.log10(gain());
    }

    /** Whether a positive pulse comes back negative. */
    public boolean inverted() {
        return fit.gain() < 0;
    }

    /** Where AC coupling has taken 3 dB; two couplings in a row appear as the one that fits best. */
    public double cornerHz() {
        return fit.cornerHz();
    }

    /** From the sweep's first sample to its coming back, to a fraction of a sample. */
    public double latencySeconds() {
        return fit.latencySeconds();
    }

    /** Rms of what gain, corner and latency do not explain, relative: small when nothing else is in the way. */
    public double unexplained() {
        return fit.residual();
    }

    /** Rms volts in the last of the tail, when the sweep is over; NaN if nothing was recorded there. */
    public double noiseRmsVolts() {
        return noiseRmsVolts;
    }

    /** Output over input in decibels, from twice the sweep's lowest frequency to 0.95 of its highest. */
    public double magnitudeDb(double hz) {
        double[] line = at(hz, 0, linearBefore(), linearAfter());
        return 20 * Math.log10(Math.hypot(line[0], line[1]));
    }

    /** Phase in degrees, latency taken out, -180 to 180; over the same range. */
    public double phaseDeg(double hz) {
        double[] line = at(hz, 0, linearBefore(), linearAfter());
        double turned = 2 * Math.PI * hz * (fit.latencySeconds() - peakFrame / sweep.rateHz());
        return Math.toDegrees(Math.IEEEremainder(Math.atan2(line[1], line[0]) + turned, 2 * Math.PI));
    }

    /**
     * How strong harmonic {@code order} (2 to 5) is when a sine of that frequency passes: in decibels against that sine
     * as it comes out. Its own frequency, order x hz, must lie within what
     * the sweep tells.
     */
    public double harmonicDb(int order, double hz) {
        if (!(order >= 2 && order <= 5)) {
            throw new Refused("harmonics of orders 2 to 5 can be measured, got " + order, "");
        }
        checkWithin(order * hz);
        double ahead = sweep.growthSeconds() * Math.log(order) * sweep.rateHz();
        // half-way to the harmonics on either side, and never so far that the lowest frequencies' ringing counts
        double toNext = sweep.growthSeconds() * Math.log((order + 1.0) / order) * sweep.rateHz() / 2;
        double[] line = at(order * hz, -(int) Math.rint(ahead), (int) toNext, (int) toNext);
        return 20 * Math.log10(Math.hypot(line[0], line[1])) - magnitudeDb(hz);
    }

    private void checkWithin(double hz) {
        if (!(hz >= sweep.fromHz() && hz <= TOLD_PART * sweep.toHz())) {
            throw new Refused("the sweep shows what happens from " + SampleCheck.hz(sweep.fromHz()) + " to "
                    + SampleCheck.hz(TOLD_PART * sweep.toHz()) + ", asked for " + SampleCheck.hz(hz), "");
        }
    }

    /** The spectrum at one frequency of a stretch of the impulse response, faded in and out over a fifth at each end. */
    private double[] at(double hz, int centre, int before, int after) {
        checkWithin(hz);
        double re = 0;
        double im = 0;
        double turn = 2 * Math.PI * hz / sweep.rateHz();
        double stepCosine = Math.cos(turn);
        double stepSine = Math.sin(turn);
        double cosine = 0;
        double sine = 0;
        for (int i = -before; i <= after; i++) {
            // turned from frame to frame, and set anew so often that rounding stays below 1e-13
            boolean anew = (i + before) % FRAMES_PER_TURN_SET == 0;
            double turned = cosine * stepCosine - sine * stepSine;
            sine = anew ? Math.sin(turn * i) : sine * stepCosine + cosine * stepSine;
            cosine = anew ? Math.cos(turn * i) : turned;
            double part = i < 0 ? (before + i) / (0.2 * before) : (after - i) / (0.2 * after);
            double fade = part >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * part);
            double value = fade * impulse[Math.floorMod(centre + i, impulse.length)];
            re += value * cosine;
            im -= value * sine;
        }
        return new double[] {re, im};
    }

    private int linearBefore() {
        return (int) (sweep.growthSeconds() * Math.log(2) / 2 * sweep.rateHz());
    }

    private int linearAfter() {
        return (int) (SineSweep.TAIL_SECONDS * sweep.rateHz());
    }

    /** Lines at rate/2 sqrt(L/f) times the peak is what an exponential sweep sends (stationary phase). */
    private static double[] divided(double[] received, double[] sent, SineSweep sweep, double binHz) {
        double[] quotient = new double[sent.length];
        double told = TOLD_PART * sweep.toHz();
        for (int k = 1; k < sent.length / 2 && k * binHz < sweep.toHz(); k++) {
            double hz = k * binHz;
            double line = sweep.peakVolts() * sweep.rateHz() / 2
                    * Math.sqrt(sweep.growthSeconds() / Math.max(hz, sweep.fromHz()));
            double fade = hz < told ? 1 : 0.5 + 0.5 * Math.cos(Math.PI * (hz - told) / (sweep.toHz() - told));
            double scale = fade / (power(sent, k) + FLOOR * FLOOR * line * line);
            quotient[2 * k] = scale * (received[2 * k] * sent[2 * k] + received[2 * k + 1] * sent[2 * k + 1]);
            quotient[2 * k + 1] = scale * (received[2 * k + 1] * sent[2 * k] - received[2 * k] * sent[2 * k + 1]);
        }
        return quotient;
    }

    private static double power(double[] packed, int k) {
        return packed[2 * k] * packed[2 * k] + packed[2 * k + 1] * packed[2 * k + 1];
    }

    private static int largest(double[] samples) {
        int at = 0;
        for (int i = 1; i < samples.length; i++) {
            at = Math.abs(samples[i]) > Math.abs(samples[at]) ? i : at;
        }
        return at;
    }

    private static double rms(double[] samples) {
        return Math.sqrt(Arrays.stream(samples).map(v -> v * v).average().orElse(Double.NaN));
    }

    private static double[] rotated(double[] samples, int first) {
        double[] turned = new double[samples.length];
        for (int i = 0; i < samples.length; i++) {
            turned[i] = samples[(i + first) % samples.length];
        }
        return turned;
    }

    /** After the sweep has come through and twelve time constants of the corner have passed. */
    private static int quietFrom(SineSweep sweep, ChainFit fit, int frames) {
        double settling = 12 / (2 * Math.PI * fit.cornerHz());
        double from = sweep.sweepFrames() + (Math.max(0, fit.latencySeconds()) + settling) * sweep.rateHz();
        return (int) Math.min(frames, from);
    }
}
