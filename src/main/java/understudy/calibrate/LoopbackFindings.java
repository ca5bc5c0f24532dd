package understudy.calibrate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.measure.ChainResponse;
import understudy.measure.SineFit;
import understudy.refusal.Refused;
import understudy.rig.AudioOutput;
import understudy.rig.Spread;

/**
 * What one patch cable from output to input tells about both together. Volts stay unknown unless the
 * input's scale is known: a cable has none.
 *
 * @param gain             input over output, each in fractions of its full scale, above the corner
 * @param cornerHz         of both AC couplings together
 * @param inverted         a positive pulse comes back negative: one of the two inverts
 * @param latencySeconds   from the first sample played to its coming back, buffers included; at most so much
 * @param latencyUncertaintySeconds by so much it may be less: when playing began is counted in frames recorded, and the
 *                         system hands those over in portions
 * @param clockRatio       frequency found over frequency played: the output's clock over the input's
 * @param clockUncertainty one standard deviation of it
 * @param sinadDb          of the tone at the program's level
 * @param thdDb            harmonics over tone
 * @param enobBits         effective bits of full scale
 * @param noisePart        rms in silence, fraction of the input's full scale
 * @param harmonicsDb      of orders 2 to 5 of a sine of 997 Hz, from the sweep, over that sine
 * @param points           the response, by rising frequency
 * @param interference     what stands in the way; empty if the output can be trusted
 */
public record LoopbackFindings(
        double gain,
        double cornerHz,
        boolean inverted,
        double latencySeconds,
        double latencyUncertaintySeconds,
        double clockRatio,
        double clockUncertainty,
        double sinadDb,
        double thdDb,
        double enobBits,
        double noisePart,
        List<Double> harmonicsDb,
        List<Point> points,
        List<Interference> interference) {

    /** A sweep from 1 Hz sees no corner below. */
    public static final double LEAST_CORNER_HZ = 0.3;

    /** 0.01 dB, which the fit of a sweep keeps. */
    private static final double GAIN_TOLERANCE = 0.00115;
    /** That a spread can hold. */
    private static final double MOST_TOLERANCE = 0.9;
    private static final int HIGHEST_ORDER = 5;
    private static final int POINTS_PER_DECADE = 16;
    /** Below, a sweep of 8 s leaves harmonics in the ringing of its own beginning. */
    private static final double LEAST_DISTORTION_HZ = 20;

    /**
     * The response at one frequency.
     *
     * @param magnitudeDb input over output
     * @param phaseDeg    latency taken out, -180 to 180
     * @param secondDb    second harmonic of a sine of that frequency, over that sine; NaN where it can't be told
     * @param thirdDb     third harmonic
     */
    public record Point(double hz, double magnitudeDb, double phaseDeg, double secondDb, double thirdDb) {}

    public LoopbackFindings {
        harmonicsDb = List.copyOf(harmonicsDb);
        points = List.copyOf(points);
        interference = List.copyOf(interference);
    }

    /**
     * @param program that was played
     * @param run     what was recorded meanwhile; looked over with {@link LoopbackCheck} before
     * @param channel of the recording, from 0
     * @throws Refused if the program is not to be found in it
     * @throws likewise
     */
    public static LoopbackFindings of(TestProgram program, LoopbackRun run, int channel) {
        return new LoopbackAnalysis(program, run, channel).findings();
    }

    /** The gain in decibels. */
    public double gainDb() {
        return 20 * Math.log10(gain);
    }

    /**
     * Peak volts of a full-scale sample of the output, with nothing connected. The input loads the output while the cable
     * is in; worst case over what its scale and both resistances may be off by, and over what the gain is known to.
     *
     * @param inputFullScaleVolts peak volts of the largest sample that the input can record
     */
    public Spread fullScaleVolts(Spread inputFullScaleVolts, Spread outputOhms, Spread inputOhms) {
        double nominal = gain * inputFullScaleVolts.nominal() * (1 + outputOhms.nominal() / inputOhms.nominal());
        double most = gain * (1 + GAIN_TOLERANCE) * inputFullScaleVolts.nominal() * (1 + inputFullScaleVolts.tolerance())
                * (1 + outputOhms.nominal() * (1 + outputOhms.tolerance()) / (inputOhms.nominal() * (1 - inputOhms.tolerance())));
        double least = gain * (1 - GAIN_TOLERANCE) * inputFullScaleVolts.nominal() * (1 - inputFullScaleVolts.tolerance())
                * (1 + outputOhms.nominal() * (1 - outputOhms.tolerance()) / (inputOhms.nominal() * (1 + inputOhms.tolerance())));
        return new Spread(nominal, Math.min(MOST_TOLERANCE, Math.max(most - nominal, nominal - least) / nominal));
    }

    static LoopbackFindings of(TestProgram program, ChainResponse response, double latencySeconds,
            double latencyUncertaintySeconds, SineFit tone, double thdDb, double noisePart, List<Interference> interference) {
        List<Double> harmonics = new ArrayList<>();
        for (int order = 2; order <= HIGHEST_ORDER; order++) {
            harmonics.add(told(response, program, order, TestProgram.TONE_HZ));
        }
        return new LoopbackFindings(response.gain(), response.cornerHz(), response.inverted(), latencySeconds,
                latencyUncertaintySeconds, tone.frequencyHz() / TestProgram.TONE_HZ, tone.frequencyUncertaintyHz() / TestProgram.TONE_HZ,
                tone.sinadDb(), thdDb, tone.enobBits(2), noisePart, harmonics, points(program, response), interference);
    }

    private static List<Point> points(TestProgram program, ChainResponse response) {
        List<Point> points = new ArrayList<>();
        double top = LoopbackAnalysis.TOLD_PART * program.sweep().toHz();
        double step = Math.pow(10, 1.0 / POINTS_PER_DECADE);
        for (double hz = 2 * program.sweep().fromHz(); hz < top; hz *= step) {
            points.add(point(program, response, hz));
        }
        points.add(point(program, response, top));
        return points;
    }

    private static Point point(TestProgram program, ChainResponse response, double hz) {
        return new Point(hz, response.magnitudeDb(hz), response.phaseDeg(hz), told(response, program, 2, hz),
                told(response, program, 3, hz));
    }

    private static double told(ChainResponse response, TestProgram program, int order, double hz) {
        boolean told = hz >= LEAST_DISTORTION_HZ && order * hz <= LoopbackAnalysis.TOLD_PART * program.sweep().toHz();
        return told ? response.harmonicDb(order, hz) : Double.NaN;
    }

    /**
     * The output as it is known now. Its resistance stays as it was, and volts if nobody knows the input's; what a cable shows
     * replaces the rest.
     *
     * @param before    what it was taken for until now
     * @param volts     full scale, peak, if it is known
     * @param inputOhms of the input at the other end of the cable
     */
    public AudioOutput output(AudioOutput before, Optional<Spread> volts, Spread inputOhms) {
        double aroundOhms = before.outputOhms().nominal() + inputOhms.nominal();
        // no corner: none at all if it was thought so, else a capacitor of at least so many farads
        Optional<Spread> coupling = cornerHz() >= LEAST_CORNER_HZ || before.couplingFarads().isPresent()
                ? Optional.of(new Spread(AudioOutput.couplingFarads(Math.max(cornerHz(), LEAST_CORNER_HZ), aroundOhms),
                        inputOhms.tolerance())) : Optional.empty();
        return new AudioOutput(volts.orElse(before.fullScaleVolts()), before.outputOhms(), coupling, inverted(), before.popVolts());
    }
}
