package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static understudy.measure.Signals.RATE_HZ;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import understudy.measure.DetectedWheel.Sensor;
import understudy.measure.EdgeTiming.Course;
import understudy.measure.TestWheel.Motion;
import understudy.refusal.Refused;

class EdgeTimingTest {

    /** Edges moved by a drawn 1 us rms: the fit takes two parameters of some 800 away, the rest comes back. */
    @Test
    void knownMissesComeBack() {
        TestWheel wheel = WheelDetectorTest.WHEEL_36_1;
        Motion motion = new Motion(12, 45, 0.8);
        Random random = new Random(1);
        int n = 700;
        double[] instants = new double[n];
        double[] drawn = new double[n];
        for (int i = 0; i < n; i++) {
            int edge = i + 20; // begins in the middle of a turn
            drawn[i] = 1e-6 * random.nextGaussian();
            instants[i] = motion.when(edge / 35 + wheel.leading()[edge % 35]) + drawn[i];
        }
        EdgeTiming timing = EdgeTiming.of(instants, wheel.leading(), Course.LINEAR);
        assertThat(timing.firstEdge()).isEqualTo(20);
        double rms = Math.sqrt(Arrays.stream(drawn).map(d -> d * d).average().orElseThrow());
        // three fitted parameters take 3/700 of the variance on average, up to five times as much by chance
        assertThat(timing.rmsSeconds()).isBetween(rms * (1 - 0.011), rms);
        // and leave every edge its own miss, but for the few sigma/sqrt(700) by which the fit itself is drawn
        for (int i = 0; i < n; i++) {
            assertThat(timing.missSeconds()[i]).isCloseTo(drawn[i], within(0.2e-6));
        }
        assertThat(timing.startHz()).isCloseTo(motion.speed(instants[0]), within(1e-4));
        assertThat(timing.endHz()).isCloseTo(motion.speed(instants[n - 1]), within(1e-4));
    }

    /**
     * Exact Hall edges, 24 bits: what rounding to samples leaves. Each edge moves by rounding noise over slope, 2^-23/sqrt(12)
     * / (0.27 x 1.6) frames = 1.6 ps, and by what the Gaussian of 1.5 frames folds around half the rate, up to 0.022 ns.
     */
    @Test
    void hallEdgesOnTime() {
        for (Motion motion : new Motion[] {new Motion(14, 14, 2), new Motion(4, 20, 2)}) {
            double[] volts = Signals.rounded(WheelDetectorTest.WHEEL_60_2.hall(motion, -0.8, 0.8, 1.5), 24);
            HallTiming found = HallTiming.of(volts, RATE_HZ, WheelDetectorTest.WHEEL_60_2.leading(),
                    WheelDetectorTest.WHEEL_60_2.trailing(), motion.f0() == motion.f1() ? Course.STEADY : Course.LINEAR);
            System.out.printf("hall 60-2, %.0f to %.0f Hz: rms %.4f ns, worst %.4f ns, level %.2e V%n", motion.f0(), motion.f1(),
                    found.timing().rmsSeconds() * 1e9, found.timing().worstSeconds() * 1e9, found.levelVolts());
            assertThat(found.timing().rmsSeconds()).isLessThan(0.03e-9);
            assertThat(found.levelVolts()).isCloseTo(0, within(1e-6));
            assertThat(found.timing().startHz()).isCloseTo(motion.f0(), within(0.2));
        }
    }

    /** A level off by 2 % of the swing shifts edges by 0.075 frames either way; solving for it brings them back. */
    @Test
    void anUnknownLevelIsSolved() {
        Motion motion = new Motion(10, 10, 2);
        double[] volts = WheelDetectorTest.WHEEL_36_1.hall(motion, 0, 1, 1.5);
        double[] rising = WheelDetectorTest.WHEEL_36_1.leading();
        double[] falling = WheelDetectorTest.WHEEL_36_1.trailing();
        assertThat(HallTiming.at(0.52, volts, RATE_HZ, rising, falling, Course.STEADY).timing().rmsSeconds() * RATE_HZ)
                .isCloseTo(0.02 * 1.5 * Math.sqrt(2 * Math.PI), within(1e-3));
        HallTiming solved = HallTiming.of(volts, RATE_HZ, rising, falling, Course.STEADY);
        assertThat(solved.levelVolts()).isCloseTo(0.5, within(1e-6));
        assertThat(solved.timing().rmsSeconds() * RATE_HZ).isLessThan(1.2e-6);
    }

    /** Zero crossings of a smooth signal far below half the rate: only the reconstruction's 1e-7 and 24 bits are left. */
    @Test
    void reluctorCrossingsOnTime() {
        for (Motion motion : new Motion[] {new Motion(14, 14, 2), new Motion(4, 20, 2)}) {
            for (boolean reversed : new boolean[] {false, true}) {
                double[] clean = WheelDetectorTest.WHEEL_60_2.reluctor(motion, 0.25, 20);
                double[] volts = Signals.rounded(reversed ? TestWheel.negated(clean) : clean, 24);
                DetectedWheel wheel = WheelDetector.detect(volts, RATE_HZ, Sensor.RELUCTOR, 0);
                EdgeTiming timing = EdgeTiming.of(wheel.instantsSeconds(), WheelDetectorTest.WHEEL_60_2.crossings(0.25),
                        motion.f0() == motion.f1() ? Course.STEADY : Course.LINEAR);
                System.out.printf("reluctor 60-2, %.0f to %.0f Hz%s: rms %.4f ns, worst %.4f ns%n", motion.f0(), motion.f1(),
                        reversed ? " reversed" : "", timing.rmsSeconds() * 1e9, timing.worstSeconds() * 1e9);
                // 24 bits of 2 V: 3.4e-8 V rms over 0.04 V a frame at 4 Hz is 0.02 ns
                assertThat(timing.rmsSeconds()).isLessThan(0.05e-9);
            }
        }
    }

    /** The offset of a sound input is not the signal's: the mean over whole turns finds it. */
    @Test
    void anOffsetIsFoundOverWholeTurns() {
        double[] volts = WheelDetectorTest.WHEEL_36_1.reluctor(new Motion(14, 14, 2), 0.25, 14);
        for (int i = 0; i < volts.length; i++) {
            volts[i] += 0.0123;
        }
        DetectedWheel wheel = WheelDetector.detect(volts, RATE_HZ);
        // ends of the sum where the slope is 0.1 V a frame leave a tenth of that over 90 000 frames
        assertThat(wheel.levelVolts()).isCloseTo(0.0123, within(2e-7));
        EdgeTiming timing = EdgeTiming.of(
                wheel.instantsSeconds(), WheelDetectorTest.WHEEL_36_1.crossings(0.25), Course.STEADY);
        assertThat(timing.rmsSeconds()).isLessThan(0.1e-9);
    }

    @Test
    void anotherGeometryIsSaid() {
        double[] volts = WheelDetectorTest.WHEEL_36_1.hall(new Motion(10, 10, 2), 0, 1, 1.5);
        double[] instants = Pulses.of(volts, RATE_HZ).risingSeconds();
        assertThatThrownBy(() -> EdgeTiming.of(instants, WheelDetectorTest.WHEEL_60_2.leading(), Course.STEADY))
                .isInstanceOf(Refused.class).hasMessageContaining("check the pattern");
        assertThatThrownBy(() -> EdgeTiming.of(new double[2], new double[] {0}, Course.STEADY))
                .isInstanceOf(Refused.class).hasMessageContaining("at least 3 edges, got 2");
        assertThatThrownBy(() -> EdgeTiming.of(new double[9], new double[] {0.5, 0.2}, Course.STEADY))
                .isInstanceOf(Refused.class).hasMessageContaining("edge 2 lies at 0.2 turns, after 0.5");
    }
}
