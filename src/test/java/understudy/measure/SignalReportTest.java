package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static understudy.measure.Signals.RATE_HZ;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import understudy.measure.TestWheel.Motion;
import understudy.refusal.Refused;

/** All instruments at once, on signals whose every figure has a closed form. */
class SignalReportTest {

    /** Raised cosines, half a period each: 0 between, all of it inside. */
    private static DoubleUnaryOperator between(double from, double to, DoubleUnaryOperator volts) {
        return t -> t < from || t > to ? 0
                : volts.applyAsDouble(t) * rise((t - from) / 0.01) * rise((to - t) / 0.01);
    }

    private static double rise(double part) {
        return 0.5 - 0.5 * Math.cos(Math.PI * Math.min(1, part));
    }

    /**
     * Half a second of silence, 3 s of tone between fades of 10 ms, a second of silence. One sine: rms peak/sqrt 2; the last part of a
     * period of 480 and the mean's 1/(2 pi 997 Hz 3 s) leave 1e-4.
     */
    @Test
    void aToneBetweenSilence() {
        double[] volts = Signals.withNoise(Signals.sampled(216_000, between(0.5, 3.5, t -> 0.8 * Math.sin(2 * Math.PI * 997 * t)
                + 0.0008 * Math.sin(2 * Math.PI * 2991 * t))), 1e-5, 1);
        SignalReport report = SignalReport.of(volts, RATE_HZ);
        assertThat(report.isTone()).isTrue();
        // 1 % of the peak is passed within the fade; 20 ms more are left out at each end
        assertThat(report.leftOut()).isBetween(0.52, 0.53);
        assertThat(report.seconds()).isBetween(2.94, 2.96);
        assertThat(SignalReport.sound(volts, RATE_HZ)).hasSize((int) Math.rint(report.seconds() * RATE_HZ));
        assertThat(report.peakVolts()).isCloseTo(0.8, within(0.001));
        assertThat(report.rmsVolts()).isCloseTo(0.8 / Math.sqrt(2), within(1e-4));
        assertThat(report.meanVolts()).isCloseTo(0, within(1e-4));
        assertThat(report.tone().frequencyHz()).isCloseTo(997, within(1e-4));
        // a third harmonic of a thousandth; noise of 1e-5 rms is 3000 times less than 0.0008/sqrt 2
        assertThat(report.tone().thdDb()).isCloseTo(-60, within(0.01));
        assertThat(report.tone().snrDb()).isCloseTo(20 * Math.log10(0.8 / Math.sqrt(2) / 1e-5), within(0.1));
        assertThat(report.tone().sinadDb()).isCloseTo(-10 * Math.log10(1e-6 + 2 * 1e-10 / 0.64), within(0.01));
        assertThat(report.tone().sfdrDb()).isCloseTo(60, within(0.01));
        assertThat(report.tone().largestOther().frequencyHz()).isCloseTo(2991, within(0.01));
        assertThat(report.pulses()).isEmpty();
    }

    /**
     * Pulses of 0.2 V to 4.7 V, 30 % of 481.7 frames wide, with Gaussian edges of 3 frames: mean and rms by duty (an edge takes 2.257
     * sigma of half the amplitude squared, see the integral of 1 - erf^2).
     */
    @Test
    void pulsesByEveryFigure() {
        double[] instants = new double[800];
        for (int k = 0; k < instants.length; k++) {
            instants[k] = 100 + (k / 2 + (k % 2 == 0 ? 0 : 0.3)) * 481.7;
        }
        // whole periods, so that the mean is that of the duty
        double[] volts = Signals.steps((int) Math.rint(400 * 481.7), instants, 0.2, 4.7, 3);
        SignalReport report = SignalReport.of(volts, RATE_HZ);
        assertThat(report.isTone()).isFalse();
        assertThat(report.leftOut()).isZero();
        // the last period's fraction of a frame against 192 680
        assertThat(report.meanVolts()).isCloseTo(0.2 + 0.3 * 4.5, within(1e-4));
        double squares = 0.7 * 0.2 * 0.2 + 0.3 * 4.7 * 4.7 - 2 * (4 * 3 / Math.sqrt(Math.PI)) * 2.25 * 2.25 / 481.7;
        assertThat(report.rmsVolts()).isCloseTo(Math.sqrt(squares), within(2e-4));
        assertThat(report.peakVolts()).isCloseTo(4.7, within(1e-9));
        Pulses pulses = report.pulses().orElseThrow();
        assertThat(pulses.levels().lowVolts()).isCloseTo(0.2, within(1e-7));
        assertThat(pulses.levels().highVolts()).isCloseTo(4.7, within(1e-7));
        assertThat(pulses.periodSeconds().mean()).isCloseTo(481.7 / RATE_HZ, within(1e-10));
        assertThat(pulses.duty()).isCloseTo(0.3, within(1e-7));
        assertThat(pulses.riseSeconds().mean()).isCloseTo(2 * 1.2815515655 * 3 / RATE_HZ, within(1e-10));
        assertThat(pulses.cycleToCycleSeconds().rms()).isLessThan(1e-10);
        DetectedWheel wheel = report.wheel().orElseThrow();
        assertThat(wheel.eventsPerTurn()).isZero();
        assertThat(SignalReport.turnHz(wheel)).isCloseTo(RATE_HZ / 481.7, within(1e-7));
        assertThat(SignalReport.steady(wheel)).isTrue();
    }

    /** A line of a thousandth of the largest between two harmonics of the turn, on a wheel at steady speed. */
    @Test
    void aLineThatIsNoHarmonicOfTheTurn() {
        TestWheel wheel = new TestWheel(36, 35);
        double[] volts = wheel.reluctor(new Motion(14, 14, 4), 0.25, 14);
        double largest = SignalReport.of(volts, RATE_HZ).tone().amplitudeVolts();
        double[] spoilt = Signals.sampled(volts.length, t -> volts[(int) Math.rint(t * RATE_HZ)] + largest / 1000 * Math.sin(2 * Math.PI * 707 * t));
        SignalReport report = SignalReport.of(spoilt, RATE_HZ);
        // 707 = 50.5 x 14
        assertThat(report.notHarmonic().orElseThrow().frequencyHz()).isCloseTo(707, within(0.3));
        assertThat(report.notHarmonic().orElseThrow().amplitudeVolts()).isCloseTo(largest / 1000, within(0.01 * largest / 1000));
        DetectedWheel found = report.wheel().orElseThrow();
        assertThat(found.eventsPerTurn()).isEqualTo(35);
        // 4 s of crossings, each moved by up to 1/1000 of the swing over its slope, some 1e-5 s
        assertThat(SignalReport.turnHz(found)).isCloseTo(14, within(14 * 1e-5));
    }

    /** From 10 to 20 turns a second in 4 s: a turn at its middle time has the mean speed of that turn. */
    @Test
    void aRampIsNotSteady() {
        Motion motion = new Motion(10, 20, 4);
        SignalReport report = SignalReport.of(new TestWheel(60, 58, 59).hall(motion, -1, 1, 2), RATE_HZ);
        DetectedWheel wheel = report.wheel().orElseThrow();
        assertThat(SignalReport.steady(wheel)).isFalse();
        assertThat(report.notHarmonic()).isEmpty();
        double[] speeds = SignalReport.turnSpeedsHz(wheel);
        for (int i = 0; i < speeds.length; i++) {
            double middle = (wheel.instantsSeconds()[i] + wheel.instantsSeconds()[i + 58]) / 2;
            assertThat(speeds[i]).isCloseTo(motion.speed(middle), within(1e-6));
        }
    }

    @Test
    void nothingToMeasure() {
        assertThatThrownBy(() -> SignalReport.of(new double[100], RATE_HZ)).isInstanceOf(Refused.class)
                .hasMessage("a measurement needs at least 256 samples, got 100; record longer");
        assertThatThrownBy(() -> SignalReport.of(new double[10_000], RATE_HZ)).isInstanceOf(Refused.class)
                .hasMessageContaining("all samples are the same");
    }
}
