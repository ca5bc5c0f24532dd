package understudy.preflight;

import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import understudy.pattern.Bursts;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.rig.Connection;
import understudy.rig.DroopCorrection;
import understudy.rig.Probe;
import understudy.rig.ReluctorInput;
import understudy.wave.Renderer;

/**
 * What the audio output plays at one steady speed, whatever the box is built of: parts of full scale at even steps of time,
 * fine enough to go straight from one to the next.
 *
 * <p>Straight lines miss a Gaussian bell of standard deviation s steps by at most 1/(8 s^2) of its height. Steps are
 * made so fine that s is {@value #FINE_STEPS}: 0.02 % of the swing; where a turn lasts so long that it would take too
 * many, an edge of 1.5 frames may be off by 0.05 frames, 1 us at 48 kHz, at speeds where that is below 0.003 deg.
 *
 * <p>A coupling with time constant tau carries, at rest, the signal's integral less its mean, over tau. So the signal is
 * begun where its integral is at its mean, which leaves the second order, (cycle/tau)^2/50 of the swing of a lone lobe
 * and far less of many teeth, and that has the {@code lead} to die away.
 *
 * @param fractions   of full scale
 * @param stepSeconds from each to the next
 * @param startSeconds when the first comes, counted from frame 0 of the renderer
 * @param judgeFrom   index from which on the coupling has settled
 * @param judgeTo     index up to which nothing is felt of the end of the samples
 * @param clipped     the output would have to go beyond full scale
 */
record Played(
        double[] fractions, double stepSeconds, double startSeconds, int judgeFrom, int judgeTo, boolean clipped) {

    private static final double FINE_STEPS = 24;
    private static final double EDGE_FRAMES = 1.5;
    private static final int MOST_FINER = 16;
    private static final int MOST_STEPS = 400_000;
    /** Some 30 MB. */
    private static final int MOST_FRAMES = 4_000_000;
    /** A mean over so many frames is off by a quarter of a thousandth of the swing at most. */
    private static final int MEAN_FRAMES = 4000;
    private static final double SETTLED_TAUS = 7;
    /** A turn and its beginning again, to see the gap twice; before that, time to settle. */
    private static final Cycles TURN = new Cycles(2, 2.2);
    /** Where a cycle has but a tooth or two; swings are judged from one to the next. */
    private static final Cycles LOBES = new Cycles(2, 3.2);
    private static final int FEW_TEETH = 4;
    /** Where a cycle is one tooth of many. */
    private static final Cycles TEETH = new Cycles(12, 6);

    /** How many cycles to run at most before judging, and how many to judge. */
    private record Cycles(double lead, double judged) {
        static Cycles of(CycleEvents events) {
            boolean few = events.timing().length < FEW_TEETH;
            return few && events.plainRing() ? TEETH : few ? LOBES : TURN;
        }
    }

    static Played at(Setup setup, CycleEvents events, double speedHz) {
        Connection connection = setup.connection();
        double cycleFrames = setup.rateHz() / events.cycleHz(speedHz);
        Cycles cycles = Cycles.of(events);
        double tauFrames = tauFrames(setup, connection);
        double settledFrames = Math.max(SETTLED_TAUS * tauFrames, cycleFrames / 2);
        // clamps shift the bias, over a few tau
        double leadFrames = clamps(setup) ? settledFrames : Math.min(cycles.lead * cycleFrames, settledFrames);
        int lead = (int) Math.ceil(leadFrames) + Finer.HALF;
        int judged = (int) Math.ceil(cycles.judged * cycleFrames) + Finer.HALF;
        int whole = (int) Math.round(Math.ceil(MEAN_FRAMES / cycleFrames) * cycleFrames);
        lead = Math.max(0, Math.min(lead, MOST_FRAMES - whole - judged));
        int frames = whole + lead + judged;

        // one array from here on: low speeds make it long, and this also runs in the small memory of playing
        double[] samples = render(setup, speedHz, frames);
        int start = 0;
        if (setup.isCoupled()) {
            subtract(samples, mean(samples, whole));
            start = balanced(samples, whole);
        }
        int count = lead + judged;
        long clippedFrames = toFractions(setup, connection, samples, start, count);
        int finer = finer(events, cycleFrames, count);
        double step = 1.0 / setup.rateHz() / finer;
        return new Played(new Finer(finer).between(samples, start, start + count - 1), step,
                (double) start / setup.rateHz(), lead * finer, (count - 1 - Finer.HALF) * finer, clippedFrames > 0);
    }

    private static double[] render(Setup setup, double speedHz, int frames) {
        Pattern pattern = setup.pattern().withOutputs(List.of(withoutNoise(setup.output())));
        Renderer renderer = new Renderer(pattern, setup.rateHz(), speedHz,
                new AtomicReference<>(Renderer.startingHand(pattern)));
        double[][] volts = new double[1][frames];
        renderer.render(volts, frames);
        for (int i = 0; i < frames; i++) {
            volts[0][i] *= setup.swapped() ? -setup.level() : setup.level();
        }
        return volts[0];
    }

    /** What listens for ringing filters the rest away. */
    private static Output withoutNoise(Output output) {
        return !(output.signal() instanceof Bursts ringing) ? output
                : new Output(output.name(), output.ratio(), output.phaseDeg(), new Bursts(ringing.frequencyHz(),
                        ringing.decaySeconds(), ringing.peakVolts(), ringing.overDeg(), ringing.atDeg(), 0));
    }

    private static double mean(double[] volts, int frames) {
        double sum = 0;
        for (int i = 0; i < frames; i++) {
            sum += volts[i];
        }
        return sum / frames;
    }

    private static void subtract(double[] volts, double mean) {
        for (int i = 0; i < volts.length; i++) {
            volts[i] -= mean;
        }
    }

    /** Where the running integral first passes its own mean. */
    private static int balanced(double[] volts, int frames) {
        double integral = 0;
        double sum = 0;
        for (int i = 0; i < frames; i++) {
            integral += volts[i];
            sum += integral;
        }
        double mean = sum / frames;
        integral = 0;
        for (int i = 0; i < frames; i++) {
            double before = integral;
            integral += volts[i];
            if (before <= mean != integral <= mean) {
                return i;
            }
        }
        return 0;
    }

    /** Makes parts of full scale of the volts, in place; those before {@code start} become like the first. */
    private static long toFractions(Setup setup, Connection connection, double[] samples, int start, int count) {
        long clipped = 0;
        if (setup.corrected() && setup.isCoupled()) {
            DroopCorrection correction = connection.droopCorrection(1.0 / setup.rateHz());
            for (int i = start; i < start + count; i++) {
                samples[i] = correction.next(samples[i]);
            }
            clipped = correction.clippedFrames();
        } else {
            double perVolt = (setup.rig().output().inverted() ? -1 : 1) / Setup.pinVoltsPerFullScale(connection);
            for (int i = start; i < start + count; i++) {
                double fraction = samples[i] * perVolt;
                samples[i] = Math.max(-1, Math.min(1, fraction));
                clipped += samples[i] != fraction ? 1 : 0;
            }
        }
        Arrays.fill(samples, 0, start, samples[start]);
        return clipped;
    }

    private static int finer(CycleEvents events, double cycleFrames, int frames) {
        double narrow = Math.max(EDGE_FRAMES, events.narrowCycles() * cycleFrames);
        int finer = 1;
        while (finer * narrow < FINE_STEPS && finer < MOST_FINER && 2L * finer * frames <= MOST_STEPS) {
            finer *= 2;
        }
        return finer;
    }

    private static double tauFrames(Setup setup, Connection connection) {
        if (!setup.isCoupled()) {
            return 0;
        }
        double cornerHz = connection.lowCornerHz(Probe.PINS, Setup.MID_HZ).orElse(Double.POSITIVE_INFINITY);
        return setup.rateHz() / (2 * Math.PI * cornerHz);
    }

    private static boolean clamps(Setup setup) {
        return setup.input().frontEnd().clamp().isPresent()
                && (setup.input() instanceof ReluctorInput || setup.isCoupled());
    }
}
