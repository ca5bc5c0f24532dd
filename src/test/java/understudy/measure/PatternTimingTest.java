package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static understudy.measure.Signals.RATE_HZ;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Profile;
import understudy.pattern.Reluctor;
import understudy.pattern.Signal;
import understudy.pattern.Speed;
import understudy.pattern.SpeedUnit;
import understudy.pattern.Tone;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;
import understudy.pattern.WheelSignal;
import understudy.refusal.Refused;

/**
 * Recordings whose every edge stands where a closed form of angle over time puts it, made without the engine; what is
 * added to them (an edge moved, another clock, a modulated phase) must come back.
 */
class PatternTimingTest {

    private static final int FRAMES = 3 * 48_000;
    private static final double CLOCK = 1 + 40e-6;
    private static final double BEGINS_SECONDS = 0.7313;
    private static final double LATE_SECONDS = 300e-9;

    /** Angle in turns over seconds, from the start of the profile. */
    private record Course(Profile.Step step, DoubleUnaryOperator turns) {

        /** By halving: angles grow. */
        double when(double angle) {
            double low = 0;
            double high = 60;
            for (int i = 0; i < 80; i++) {
                double middle = (low + high) / 2;
                low = turns.applyAsDouble(middle) < angle ? middle : low;
                high = turns.applyAsDouble(middle) < angle ? high : middle;
            }
            return (low + high) / 2;
        }
    }

    private static Course course(String name) {
        double tau = 5 / Math.log(8);
        return switch (name) {
            // 8 to 60 turns a second over 5 s: its integral
            case "ramp" -> new Course(new Profile.Ramp(8, 60, 5), t -> 8 * t + 52 * t * t / 10);
            // equal ratios in equal times
            case "sweep" -> new Course(new Profile.Sweep(5, 40, 5), t -> 5 * tau * Math.expm1(t / tau));
            // the speed swings with the mean angle 4 t, twice a turn: 4 t + 0.25/(4 pi) (1 - cos(4 pi 4 t))
            case "crank" -> new Course(new Profile.Crank(4, 5, 4, 0.25), t -> 4 * t + 0.25 / (4 * Math.PI) * (1 - Math.cos(16 * Math.PI * t)));
            default -> throw new IllegalArgumentException(name);
        };
    }

    private static Pattern pattern(Signal signal, double phaseDeg, Profile.Step... steps) {
        return new Pattern("test", "Test", "", "", List.of(), List.of(), new Speed(SpeedUnit.HZ, Double.NaN, 10, 0, 1000),
                List.of(new Output("one", 1, phaseDeg, signal)),
                steps.length == 0 ? Optional.empty() : Optional.of(new Profile(List.of(steps))), List.of(), 1);
    }

    private static PatternTiming timing(double[] volts, Pattern pattern) {
        return PatternTiming.of(volts, RATE_HZ, new PatternTiming.Asked(pattern, 0, 10, 9));
    }

    private static Wheel wheel36(double earlyDeg) {
        List<Tooth> teeth = new ArrayList<>();
        for (int k = 0; k < 35; k++) {
            teeth.add(new Tooth(k + 1, 10 * k - earlyDeg, 5));
        }
        return new Wheel(360, 10, teeth);
    }

    /**
     * A 36-1 Hall wheel, drawn 25 degrees late, recorded from somewhere within the profile by a clock 40 ppm off; one of its edges
     * comes 300 ns late. Edges of 2.5 frames are good to 2e-7 frames (4 ps); the fit of clock and delay is pulled by the late
     * edge by 300 ns / n or so.
     */
    @ParameterizedTest
    @CsvSource({"ramp", "sweep", "crank"})
    void hallEdgesFollowAProfile(String name) {
        Course course = course(name);
        List<Double> at = new ArrayList<>();
        for (int k = 0; at.isEmpty() || at.get(at.size() - 1) < FRAMES + 100; k++) {
            for (double edge : new double[] {0, 0.5}) {
                double angle = k / 35 + (k % 35 + edge) / 36 + 25 / 360.0;
                double frame = (course.when(angle) - BEGINS_SECONDS) * CLOCK * RATE_HZ;
                if (frame > -100 && (!at.isEmpty() || edge == 0)) {
                    at.add(frame);
                }
            }
        }
        int late = at.size() / 2;
        at.set(late, at.get(late) + LATE_SECONDS * RATE_HZ);
        double[] instants = at.stream().mapToDouble(Double::doubleValue).toArray();
        PatternTiming found = timing(Signals.steps(FRAMES, instants, -1, 1, 2.5),
                pattern(new WheelSignal(wheel36(0), new Hall(-1.2, 1.2)), 25, course.step()));
        EdgeTiming timing = found.timing();
        int n = timing.missSeconds().length;
        // all but those within 256 frames of the ends
        assertThat(n).isGreaterThan((int) instantsWithin(instants, 300) - 1);
        assertThat(timing.worstSeconds()).isCloseTo(LATE_SECONDS, within(4 * LATE_SECONDS / n + 0.01e-9));
        assertThat(timing.worstAtSeconds()).isCloseTo(instants[late] / RATE_HZ, within(1e-9));
        assertThat(timing.rmsSeconds()).isCloseTo(LATE_SECONDS / Math.sqrt(n), within(0.05 * LATE_SECONDS / Math.sqrt(n)));
        // 300 ns at one edge of n over 3 s turn the line by less than 6 x 300 ns / (n 3 s)
        assertThat(timing.clockRatio() - 1).isCloseTo(40e-6, within(6 * LATE_SECONDS / n / 3 + 1e-11));
        assertThat(found.inverted()).isFalse();
        // the first and the last edge lie within 256 frames and a gap of the ends, 20 ms; the speed changes by no more than this a second
        double most = 0.02 * Map.of("ramp", 10.4, "sweep", 40 * Math.log(8) / 5, "crank", 0.25 * 4 * 16 * Math.PI).get(name);
        assertThat(found.startHz()).isCloseTo(speed(course, BEGINS_SECONDS), within(most));
        assertThat(found.endHz()).isCloseTo(speed(course, BEGINS_SECONDS + 3), within(most));
    }

    private static double speed(Course course, double seconds) {
        return (course.turns().applyAsDouble(seconds + 1e-6) - course.turns().applyAsDouble(seconds - 1e-6)) / 2e-6;
    }

    private static long instantsWithin(double[] instants, double margin) {
        return Arrays.stream(instants).filter(at -> at > margin && at < FRAMES - margin).count();
    }

    /**
     * A reluctor on 36-1, either way round: crossings at teeth, where the flux peaks. Under cranking ripple the slope there is
     * some 0.01 V a frame, and the mean of volts over whole turns is none but for its ends.
     */
    @ParameterizedTest
    @CsvSource({"ramp, false", "crank, false", "crank, true"})
    void reluctorCrossingsFollowAProfile(String name, boolean upsideDown) {
        Course course = course(name);
        TestWheel geometry = new TestWheel(36, 35);
        DoubleUnaryOperator flux = geometry.fluxSlope(0.25);
        double[] volts = Signals.sampled(FRAMES, t -> {
            double seconds = t / CLOCK + BEGINS_SECONDS;
            return speed(course, seconds) / 60 * flux.applyAsDouble(course.turns().applyAsDouble(seconds)) * (upsideDown ? -1 : 1);
        });
        PatternTiming found = timing(volts, pattern(new WheelSignal(wheel36(0), new Reluctor(1, 10, 50, 0.25, false)), 0, course.step()));
        System.out.printf("reluctor 36-1, %s, upside down %s: %d crossings, rms %.4f ns, worst %.4f ns%n", name, upsideDown,
                found.timing().missSeconds().length, found.timing().rmsSeconds() * 1e9, found.timing().worstSeconds() * 1e9);
        assertThat(found.inverted()).isEqualTo(upsideDown);
        assertThat(found.timing().rmsSeconds()).isLessThan(1e-9);
        assertThat(found.timing().clockRatio() - 1).isCloseTo(40e-6, within(1e-8));
    }

    @Test
    void anotherProfileIsSaid() {
        Course ramp = course("ramp");
        List<Double> at = new ArrayList<>();
        for (int k = 0; k < 700; k++) {
            at.add(ramp.when(k / 35 + k % 35 / 36.0) * RATE_HZ + 500);
            at.add(ramp.when(k / 35 + (k % 35 + 0.5) / 36.0) * RATE_HZ + 500);
        }
        double[] volts = Signals.steps((int) (double) at.get(at.size() - 1) + 500, at.stream().mapToDouble(Double::doubleValue).toArray(), -1, 1, 2);
        Pattern other = pattern(new WheelSignal(wheel36(0), new Hall(-1, 1)), 0, new Profile.Ramp(8, 60, 6));
        assertThatThrownBy(() -> timing(volts, other)).isInstanceOf(Refused.class).hasMessageContaining("this profile")
                .hasMessageContaining("nobody changed the speed");
    }

    /**
     * A phase that swings by 1e-4 rad moves crossings by that over 2 pi f, 15.96 ns at most, over sqrt 2 in the rms; what is
     * sampled at some phase of the swing comes within 1 % of both over 300 swings. 0.9 of the level is -0.915 dB.
     */
    @ParameterizedTest
    @CsvSource({"true", "false"})
    void aSineThatWavers(boolean fixed) {
        double hz = 997.3;
        double[] volts = Signals.sampled(FRAMES, t -> 0.0123 + 0.9 * Math.sin(2 * Math.PI * hz * t + 1 + 1e-4 * Math.sin(2 * Math.PI * 101.7 * t)));
        PatternTiming found = timing(volts, pattern(new Tone(Tone.Shape.SINE, fixed ? 997 : Double.NaN, fixed ? Double.NaN : 10, 2, 0, 0.5), 0));
        double most = 1e-4 / (2 * Math.PI * hz);
        assertThat(found.timing().rmsSeconds()).isCloseTo(most / Math.sqrt(2), within(0.01 * most));
        assertThat(found.timing().worstSeconds()).isCloseTo(most, within(0.02 * most));
        // three and more seconds of crossings 0.5 ms apart: the swing leaves 1e-4 rad / (2 pi 3 s) of the frequency at most
        assertThat(found.cycleHz()).isCloseTo(hz, within(1e-5));
        assertThat(found.startHz()).isCloseTo(fixed ? hz : hz / 10, within(1e-4));
        assertThat(found.levelDb()).isCloseTo(20 * Math.log10(0.9), within(1e-3));
    }

    /** A square that is high for 30 %, and a triangle that rises for 20 % and is drawn by its harmonics: on time, and upside down. */
    @Test
    void otherShapes() {
        List<Double> at = new ArrayList<>();
        for (int k = 0; k < 290; k++) {
            at.add(100 + k * 481.7);
            at.add(100 + (k + 0.3) * 481.7);
        }
        double[] instants = at.stream().mapToDouble(Double::doubleValue).toArray();
        Pattern square = pattern(new Tone(Tone.Shape.SQUARE, 99.6, Double.NaN, 2, 0, 0.3), 0);
        for (boolean upsideDown : new boolean[] {false, true}) {
            PatternTiming found = timing(Signals.steps(FRAMES - 5000, instants, upsideDown ? 1 : -1, upsideDown ? -1 : 1, 2.5), square);
            assertThat(found.inverted()).isEqualTo(upsideDown);
            assertThat(found.timing().rmsSeconds()).isLessThan(0.01e-9);
            assertThat(found.cycleHz()).isCloseTo(RATE_HZ / 481.7, within(1e-8));
            // a Gaussian edge takes 4 sigma/sqrt pi of 1 V^2, two of them of 481.7 x 0.84 V^2; a part of a cycle in 290 is 0.02 dB
            double edges = 10 * Math.log10(1 - 2 * 4 * 2.5 / Math.sqrt(Math.PI) / (481.7 * 0.84));
            assertThat(found.levelDb()).isCloseTo(edges, within(0.02));
        }
        // its slope steps by 2/(d(1-d)) V a cycle at 0 and back at d; twice integrated, line by line (Fourier)
        double d = 0.2;
        double[] triangle = Signals.sampled(FRAMES, t -> {
            double sum = 0;
            for (int k = 1; k <= 60; k++) {
                double angle = 2 * Math.PI * k * 40 * t;
                sum -= (Math.cos(angle) - Math.cos(angle - 2 * Math.PI * k * d)) / (d * (1 - d) * Math.PI * Math.PI * k * k);
            }
            return sum;
        });
        PatternTiming found = timing(triangle, pattern(new Tone(Tone.Shape.TRIANGLE, 40, Double.NaN, 2, 0, d), 0));
        assertThat(found.inverted()).isFalse();
        // what lies above order n sums to at most 1/(n^2 sin(pi x)) at a distance x from a corner (Abel): on the slow side two
        // of 0.63 V x 2.9e-4 over 100 V/s
        assertThat(found.timing().rmsSeconds()).isLessThan(3.7e-6);
        assertThat(found.levelDb()).isCloseTo(0, within(0.01));
    }

    @Test
    void whatHasNoEdgesIsSaid() {
        Pattern drawn = pattern(new understudy.pattern.Bursts(6000, 0.001, 1, 360, List.of(0.0), 0), 0);
        assertThatThrownBy(() -> timing(new double[FRAMES], drawn)).isInstanceOf(Refused.class)
                .hasMessageContaining("output one of test has neither teeth nor a plain shape");
    }
}
