package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static understudy.measure.Signals.RATE_HZ;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import understudy.measure.DetectedWheel.Polarity;
import understudy.measure.DetectedWheel.Sensor;
import understudy.measure.TestWheel.Motion;
import understudy.refusal.Refused;

class WheelDetectorTest {
    static final TestWheel WHEEL_60_2 = new TestWheel(60, 58, 59);
    static final TestWheel WHEEL_36_1 = new TestWheel(36, 35);
    static final TestWheel WHEEL_36_2_2_2 = new TestWheel(36, 16, 17, 19, 20, 34, 35);
    static final TestWheel WHEEL_24_1 = new TestWheel(24, 23);

    static List<Arguments> gappedWheels() {
        return List.of(
                Arguments.of("60-2", WHEEL_60_2, 58, 60, 3.0, 1),
                Arguments.of("36-1", WHEEL_36_1, 35, 36, 2.0, 1),
                Arguments.of("36-2-2-2", WHEEL_36_2_2_2, 30, 36, 3.0, 3),
                Arguments.of("24-1", WHEEL_24_1, 23, 24, 2.0, 1));
    }

    /** Steady, ramping up and down; each with noise 26 dB below the peak or a hundred times less. */
    private static List<Motion> motions() {
        return List.of(new Motion(13.37, 13.37, 1.2), new Motion(5, 30, 2), new Motion(30, 4, 2));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("gappedWheels")
    void hallWheelsEitherWayRound(String name, TestWheel wheel, int teeth, int places, double gap, int gaps) {
        for (Motion motion : motions()) {
            for (double noise : new double[] {0.0005, 0.05}) {
                double[] volts = Signals.withNoise(wheel.hall(motion, -0.9, 1.1, 1.5), noise, 11);
                check(WheelDetector.detect(volts, RATE_HZ), Sensor.TWO_LEVEL, Polarity.NORMAL, teeth, places, gap, gaps);
                check(WheelDetector.detect(TestWheel.negated(volts), RATE_HZ),
                        Sensor.TWO_LEVEL, Polarity.REVERSED, teeth, places, gap, gaps);
            }
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("gappedWheels")
    void reluctorWheelsEitherWayRound(String name, TestWheel wheel, int teeth, int places, double gap, int gaps) {
        for (Motion motion : motions()) {
            for (double pole : new double[] {0.15, 0.3}) {
                double[] clean = wheel.reluctor(motion, pole, 30);
                double peak = Arrays.stream(clean).max().orElseThrow();
                // 26 dB below the peak at the fastest; at the slowest, an eighth of that, noise would hide every tooth
                double noise = peak * 0.05 * Math.min(motion.f0(), motion.f1()) / Math.max(motion.f0(), motion.f1());
                for (double rms : new double[] {noise / 100, noise}) {
                    double[] volts = Signals.withNoise(clean, rms, 12);
                    check(WheelDetector.detect(volts, RATE_HZ), Sensor.RELUCTOR, Polarity.NORMAL, teeth, places, gap, gaps);
                    check(WheelDetector.detect(TestWheel.negated(volts), RATE_HZ),
                            Sensor.RELUCTOR, Polarity.REVERSED, teeth, places, gap, gaps);
                }
            }
        }
    }

    /** A gap's length is told to 0.15 pitch: teeth beside a reluctor's gap are drawn towards it by some hundredths. */
    private static void check(DetectedWheel wheel, Sensor sensor, Polarity polarity, int teeth, int places, double gap, int gaps) {
        assertThat(wheel.sensor()).isEqualTo(sensor);
        assertThat(wheel.eventsPerTurn()).isEqualTo(teeth);
        assertThat(wheel.placesPerTurn()).isEqualTo(places);
        assertThat(wheel.polarity()).isEqualTo(polarity);
        assertThat(wheel.gaps()).hasSize(gaps).allSatisfy(g -> assertThat(g.pitches()).isCloseTo(gap, within(0.15)));
        assertThat(wheel.gaps().get(gaps - 1).afterTooth()).isEqualTo(teeth);
    }

    /** 16 teeth, gap, one tooth, gap, 13 teeth, gap: counted from the gap that most teeth follow. */
    @Test
    void gapsLieWhereTheyWereDrawn() {
        double[] volts = WHEEL_36_2_2_2.hall(new Motion(20, 20, 1), 0, 5, 1.5);
        assertThat(WheelDetector.detect(volts, RATE_HZ).gaps().stream().map(DetectedWheel.Gap::afterTooth))
                .containsExactly(16, 17, 30);
    }

    /** Reversed wires cut a gap of M missing teeth into two of (M+2)/2, and none whole: what a decoder would trip over. */
    @Test
    void reversedWiresShowByTwoCutGaps() {
        double[] volts = WHEEL_60_2.reluctor(new Motion(15, 15, 1), 0.25, 15);
        double[] reversed = Crossings.of(TestWheel.negated(volts), 0).frames(false);
        Rhythm asADecoderSeesIt = Rhythm.of(reversed);
        assertThat(asADecoderSeesIt.events()).isEqualTo(58);
        assertThat(asADecoderSeesIt.places()).isEqualTo(60);
        assertThat(Arrays.stream(asADecoderSeesIt.intervals()).filter(i -> Math.abs(i - 2) < 0.15).count()).isEqualTo(2);
        assertThat(Arrays.stream(asADecoderSeesIt.intervals()).max().orElseThrow()).isLessThan(2.2);
        assertThat(WheelDetector.detect(TestWheel.negated(volts), RATE_HZ).inWords())
                .isEqualTo("58 teeth a turn on 60 places, gap of 3.0 pitches after tooth 58; the two wires are swapped");
    }

    @Test
    void evenRingsGiveTheRateAndSaySo() {
        for (int teeth : new int[] {44, 17}) {
            double[] volts = Signals.withNoise(
                    new TestWheel(teeth).reluctor(new Motion(9.3, 9.3, 2), 0.3, 9.3), 0.02, 13);
            DetectedWheel wheel = WheelDetector.detect(volts, RATE_HZ);
            assertThat(wheel.eventsPerTurn()).isZero();
            assertThat(wheel.polarity()).isEqualTo(Polarity.UNKNOWN);
            // a crossing scatters by noise / slope, below 1e-5 s here, against 2 s
            assertThat(wheel.eventRateHz()).isCloseTo(teeth * 9.3, within(teeth * 9.3 * 1e-4));
            assertThat(wheel.inWords()).contains("are not known");
        }
    }

    /** A lobe of 60 degrees, of 4 degrees: one event a turn, no gap to be seen. */
    @Test
    void oneLobeCams() {
        for (double width : new double[] {60 / 360.0, 4 / 360.0}) {
            TestWheel cam = new TestWheel(1, new double[][] {{0.2, width}});
            double[] hall = Signals.withNoise(cam.hall(new Motion(8, 8, 3), 0, 5, 1.5), 0.05, 14);
            DetectedWheel high = WheelDetector.detect(hall, RATE_HZ);
            assertThat(high.sensor()).isEqualTo(Sensor.TWO_LEVEL);
            assertThat(high.eventsPerTurn()).isZero();
            assertThat(high.eventRateHz()).isCloseTo(8, within(0.001));
            // the pole piece is a degree wide; a reluctor on a lobe gives two lone pulses
            double[] coil = Signals.withNoise(cam.reluctor(new Motion(8, 8, 3), 1 / 360.0, 8), 0.01, 15);
            if (width < 10 / 360.0) {
                DetectedWheel wheel = WheelDetector.detect(coil, RATE_HZ);
                assertThat(wheel.sensor()).isEqualTo(Sensor.RELUCTOR);
                assertThat(wheel.polarity()).isEqualTo(Polarity.NORMAL);
                assertThat(wheel.eventRateHz()).isCloseTo(8, within(0.001));
                assertThat(WheelDetector.detect(TestWheel.negated(coil), RATE_HZ).polarity()).isEqualTo(Polarity.REVERSED);
            }
        }
    }

    /** Three lobes, no two alike: the order repeats after three, though the teeth stand on no grid. */
    @Test
    void unevenCamsRepeat() {
        TestWheel cam = new TestWheel(0.1, new double[][] {{0.0, 0.08}, {0.21, 0.15}, {0.58, 0.22}});
        DetectedWheel wheel = WheelDetector.detect(cam.hall(new Motion(8, 8, 3), 0, 5, 1.5), RATE_HZ);
        assertThat(wheel.eventsPerTurn()).isEqualTo(3);
        assertThat(wheel.placesPerTurn()).isZero();
        // from the longest: 0.42, 0.21, 0.37 of a turn, against the median, 0.37
        assertThat(wheel.intervalsPitches()).containsExactly(new double[] {0.21 / 0.37, 1, 0.42 / 0.37}, within(0.01));
    }

    /** Cranking: 200 rpm with 25 % of ripple twice a turn, the angle in closed form: a = m - r sin(4 pi m) / (4 pi). */
    @Test
    void crankingRippleIsNoGap() {
        double hz = 200 / 60.0;
        double ripple = 0.25;
        TestWheel wheel = WHEEL_36_1;
        double[] slow = wheel.reluctor(new Motion(1, 1, 1), 0.25, 1);
        double[] volts = Signals.sampled(3 * 48_000, t -> {
            double mean = hz * t;
            double angle = mean - ripple * Math.sin(4 * Math.PI * mean) / (4 * Math.PI);
            double speed = 1 - ripple * Math.cos(4 * Math.PI * mean);
            // a table of one turn, 48000 entries: the nearest is near enough for counting
            return speed * slow[(int) Math.floor((angle - Math.floor(angle)) * 48_000)];
        });
        DetectedWheel found = WheelDetector.detect(volts, RATE_HZ);
        assertThat(found.eventsPerTurn()).isEqualTo(35);
        assertThat(found.placesPerTurn()).isEqualTo(36);
        assertThat(found.polarity()).isEqualTo(Polarity.NORMAL);
    }

    /** Behind a coupling capacitor, 20 Hz: at 200 rpm half of each level has gone by the next edge. */
    @Test
    void droopHidesNoGap() {
        for (double hz : new double[] {200 / 60.0, 13, 50}) {
            double[] volts = WHEEL_36_1.hall(new Motion(hz, hz, 4), -1, 1, 1.5);
            double low = volts[0];
            for (int i = 0; i < volts.length; i++) {
                low += 2 * Math.PI * 20 / RATE_HZ * (volts[i] - low);
                volts[i] -= low;
            }
            check(WheelDetector.detect(volts, RATE_HZ), Sensor.TWO_LEVEL, Polarity.NORMAL, 35, 36, 2.0, 1);
            check(WheelDetector.detect(TestWheel.negated(volts), RATE_HZ), Sensor.TWO_LEVEL, Polarity.REVERSED, 35, 36, 2.0, 1);
        }
    }

    /** Speed in the middle of each interval of a ramp is the ramp's there, but for the interval's bend: below 1e-3. */
    @Test
    void speedOverTime() {
        Motion motion = new Motion(10, 60, 3);
        DetectedWheel wheel = WheelDetector.detect(WHEEL_36_1.hall(motion, 0, 5, 1.5), RATE_HZ);
        for (int i = 0; i < wheel.speeds().length; i++) {
            double expected = motion.speed(wheel.speedSeconds()[i]);
            assertThat(wheel.speeds()[i]).isCloseTo(expected, within(1e-3 * expected));
        }
    }

    @Test
    void tooFewEventsAreSaid() {
        assertThatThrownBy(() -> WheelDetector.detect(Signals.withNoise(new double[48_000], 0, 1), RATE_HZ))
                .isInstanceOf(Refused.class);
        double[] one = Signals.steps(48_000, new double[] {20_000, 21_000}, 0, 1, 2);
        assertThatThrownBy(() -> WheelDetector.detect(one, RATE_HZ))
                .isInstanceOf(Refused.class).hasMessageContaining("only 1 events in this recording of 1 s");
    }
}
