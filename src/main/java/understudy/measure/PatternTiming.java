package understudy.measure;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Function;
import understudy.measure.DetectedWheel.Sensor;
import understudy.measure.EdgeTiming.Course;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Profile;
import understudy.refusal.Refused;

/**
 * How far the edges of a recording lie from where a pattern puts them: at a speed that is steady or changes linearly, or, if
 * the pattern has a profile, at the very instants of that profile.
 *
 * <p>Of a Hall wheel both edges of every tooth count, of a tone both crossings of its middle, at the level where pulses
 * are as wide as drawn; of a reluctor the crossings at its teeth.
 *
 * @param timing   of all edges, or of the first {@value #MOST_EDGES}
 * @param inverted the recording is upside down against the pattern, as far as its shape can tell
 * @param startHz  at the first edge: turns of the pattern per second, or cycles of a tone of fixed frequency
 * @param endHz    at the last
 * @param cycleHz  cycles of a tone per second, on average; NaN if it is none, or follows a profile
 * @param levelDb  a tone's rms about its mean against what is drawn; NaN likewise
 */
public record PatternTiming(
        EdgeTiming timing, boolean inverted, double startHz, double endHz, double cycleHz, double levelDb) {

    /** So many take some seconds to place. */
    static final int MOST_EDGES = 100_000;
    private static final int LEVEL_ROUNDS = 3;
    /** Of the usual swing: far more than rounding, far less than what bends a crossing. */
    private static final double LEVEL_STEP = 1e-4;
    private static final double MOST_LEVEL_STEPS = 1000;

    /**
     * What a recording is held against.
     *
     * @param pattern as it was played; its faults are not looked at, and its profile decides where edges should be
     * @param output  of the pattern, from 0; a wheel or a tone
     * @param startHz speed where a profile does not say, turns per second
     * @param seconds from the start of the profile to the recording's end, at most
     */
    public record Asked(Pattern pattern, int output, double startHz, double seconds) {

        private Optional<Profile> profile() {
            return pattern.profile();
        }
    }

    /**
     * @param recorded a recording of one output; no edge missing
     * @throws Refused if the output has no edges, or if they don't follow its geometry, or the profile
     */
    public static PatternTiming of(double[] recorded, double rateHz, Asked asked) {
        SampleCheck.check(recorded, rateHz, 2 * Between.HALF + 2, "a timing measurement");
        DrawnEdges drawn = DrawnEdges.of(asked.pattern(), asked.output());
        double[] volts = beginning(recorded);
        try {
            return of(volts, rateHz, drawn, false, asked);
        } catch (Refused asDrawn) {
            try {
                return of(volts, rateHz, drawn.inverted(), true, asked);
            } catch (Refused upsideDown) {
                throw asDrawn;
            }
        }
    }

    private static PatternTiming of(double[] volts, double rateHz, DrawnEdges drawn, boolean inverted, Asked asked) {
        Function<Crossings, EdgeTiming> places = places(drawn, rateHz, asked);
        EdgeTiming timing = drawn.bothTell()
                ? HallTiming.of(volts, places).timing()
                : atBestLevel(volts, rateHz, drawn.falling().length == 0, places);
        // a program knows the pattern's speed, the geometry alone knows cycles
        boolean followed = !Double.isNaN(timing.clockRatio());
        double perCycle = drawn.fixedFrequency() || followed ? 1 : 1 / drawn.cyclesPerTurn();
        boolean tone = !Double.isNaN(drawn.rmsVolts());
        return new PatternTiming(timing, inverted, timing.startHz() * perCycle, timing.endHz() * perCycle,
                tone && !followed ? (timing.startHz() + timing.endHz()) / 2 : Double.NaN,
                tone ? 20 * Math.log10(rmsAboutMean(volts) / drawn.rmsVolts()) : Double.NaN);
    }

    /**
     * A coil's zero, which the recording may have moved, and which is not quite the mean where the speed changes or the
     * sound fades in. A wrong level makes slow crossings later than quick ones: Gauss-Newton finds the one that fits best.
     * At steady speed on even teeth it makes all equally late, and does not matter.
     */
    private static EdgeTiming atBestLevel(double[] volts, double rateHz, boolean upwards, Function<Crossings, EdgeTiming> places) {
        double level = WheelDetector.detect(volts, rateHz, Sensor.RELUCTOR).levelVolts();
        double step = LEVEL_STEP * Crossings.usualTurningPoints(volts).amplitudeVolts();
        EdgeTiming best = places.apply(Crossings.of(volts, level).only(upwards));
        for (int round = 0; round < LEVEL_ROUNDS; round++) {
            double[] here = best.missSeconds();
            double[] there = places.apply(Crossings.of(volts, level + step).only(upwards)).missSeconds();
            double product = 0;
            double squares = 0;
            for (int i = 0; i < here.length && i < there.length; i++) {
                product += here[i] * (there[i] - here[i]);
                squares += (there[i] - here[i]) * (there[i] - here[i]);
            }
            if (squares == 0) {
                return best;
            }
            double moved = level - step * Math.max(-MOST_LEVEL_STEPS, Math.min(MOST_LEVEL_STEPS, product / squares));
            EdgeTiming next = places.apply(Crossings.of(volts, moved).only(upwards));
            if (!(next.rmsSeconds() < best.rmsSeconds())) {
                return best;
            }
            best = next;
            level = moved;
        }
        return best;
    }

    private static double rmsAboutMean(double[] volts) {
        double mean = Arrays.stream(volts).average().orElseThrow();
        return Math.sqrt(Arrays.stream(volts).map(v -> (v - mean) * (v - mean)).average().orElseThrow());
    }

    private static double[] beginning(double[] volts) {
        int[] turns = Crossings.turningPoints(volts);
        return turns.length <= MOST_EDGES ? volts : Arrays.copyOf(volts, turns[MOST_EDGES] + Between.HALF);
    }

    private static Function<Crossings, EdgeTiming> places(DrawnEdges drawn, double rateHz, Asked asked) {
        Output output = asked.pattern().outputs().get(asked.output());
        if (asked.profile().isPresent() && !drawn.fixedFrequency()) {
            Program program = Program.of(asked.profile().get(), asked.startHz(), drawn.cyclesPerTurn(), output.phaseDeg() / 360,
                    drawn.rising(), drawn.falling(), asked.seconds());
            return crossings -> ProgramTiming.of(crossings, rateHz, program);
        }
        Course course = drawn.fixedFrequency() ? Course.STEADY : Course.LINEAR;
        return drawn.bothTell()
                ? crossings -> EdgeTiming.ofBoth(crossings, rateHz, drawn.rising(), drawn.falling(), course)
                : crossings -> EdgeTiming.of(Arrays.stream(crossings.frames()).map(frame -> frame / rateHz).toArray(),
                        drawn.rising().length > 0 ? drawn.rising() : drawn.falling(), course);
    }
}
