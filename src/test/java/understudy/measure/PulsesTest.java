package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static understudy.measure.Signals.RATE_HZ;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.refusal.Refused;

class PulsesTest {

    /** Up at k * period, down a duty later, for as long as the recording lasts. */
    private static double[] pulseInstants(int frames, double first, double periodFrames, double duty) {
        int count = (int) ((frames - first) / periodFrames);
        double[] instants = new double[2 * count];
        for (int k = 0; k < count; k++) {
            instants[2 * k] = first + k * periodFrames;
            instants[2 * k + 1] = instants[2 * k] + duty * periodFrames;
        }
        return instants;
    }

    /**
     * Sampling a Gaussian edge of s = 1.5 frames folds what lies above half the rate, exp(-(pi s)^2 / 2) / (pi^3 s^2)
     * = 2.2e-7 of the step; over its slope of 0.266 a frame that moves an edge by at most 8.1e-7 frames. Edges 40
     * and 60 frames away add 5 %; the reconstruction's soft end from 0.491 to 0.509 of the rate 2 x 8e-8: 1.1e-6 in
     * all (0.02 ns). At 2.5 frames what folds is below 1e-12, and 1e-8 of the swing in the levels is left. Rounding to 24
     * bits of 2 V moves an edge by 1.6e-7 frames rms over the 1.6 V step, 7e-7 for the worst of two thousand.
     */
    @ParameterizedTest
    @CsvSource({"1.5, false, 1.2e-6", "2.5, false, 2e-7", "1.5, true, 1.9e-6"})
    void instantsBetweenSamplesAreExact(double sigma, boolean rounded, double tolerance) {
        double[] instants = pulseInstants(100_000, 77.77, 97.3219, 0.4);
        double[] volts = Signals.steps(100_000, instants, -0.7, 0.9, sigma);
        Pulses pulses = Pulses.of(rounded ? Signals.rounded(volts, 24) : volts, RATE_HZ);
        assertThat(pulses.risingSeconds().length).isGreaterThan(1000);
        double worst = 0;
        for (double at : pulses.risingSeconds()) {
            double turns = (at * RATE_HZ - 77.77) / 97.3219;
            worst = Math.max(worst, Math.abs(turns - Math.rint(turns)) * 97.3219);
        }
        for (double at : pulses.fallingSeconds()) {
            double turns = (at * RATE_HZ - 77.77) / 97.3219 - 0.4;
            worst = Math.max(worst, Math.abs(turns - Math.rint(turns)) * 97.3219);
        }
        System.out.printf("edge of %.1f frames, rounded %s: worst instant %.4f ns%n", sigma, rounded, worst / RATE_HZ * 1e9);
        assertThat(worst).isLessThan(tolerance);
    }

    /** The 10 % and 90 % points of a Gaussian edge are 2 x 1.2815516 sigma apart. */
    @Test
    void everyFigureOfACleanPulseTrain() {
        double[] volts = Signals.steps(60_000, pulseInstants(60_000, 10, 480.6, 0.3), 0.2, 4.7, 3);
        Pulses pulses = Pulses.of(volts, RATE_HZ);
        // the tails of the edges hold 1e-9 of the step at rest; edges are good to 1e-6 frames
        assertThat(pulses.levels().lowVolts()).isCloseTo(0.2, within(1e-7));
        assertThat(pulses.levels().highVolts()).isCloseTo(4.7, within(1e-7));
        assertThat(pulses.periodSeconds().mean()).isCloseTo(480.6 / RATE_HZ, within(1e-10));
        assertThat(pulses.highSeconds().mean()).isCloseTo(0.3 * 480.6 / RATE_HZ, within(1e-10));
        assertThat(pulses.lowSeconds().mean()).isCloseTo(0.7 * 480.6 / RATE_HZ, within(1e-10));
        assertThat(pulses.duty()).isCloseTo(0.3, within(1e-7));
        assertThat(pulses.riseSeconds().mean()).isCloseTo(2 * 1.2815515655 * 3 / RATE_HZ, within(1e-10));
        assertThat(pulses.fallSeconds().mean()).isCloseTo(2 * 1.2815515655 * 3 / RATE_HZ, within(1e-10));
        assertThat(pulses.cycleToCycleSeconds().rms()).isLessThan(1e-10);
        assertThat(pulses.overshootPercent().most()).isLessThan(1e-5);
        assertThat(pulses.undershootPercent().most()).isLessThan(1e-5);
        assertThat(Math.abs(pulses.tiltPercent().mean())).isLessThan(1e-5);
        assertThat(pulses.riseSeconds().count()).isEqualTo(pulses.risingSeconds().length);
    }

    /** Every other period longer by 0.02 frames: so periods are 0.02 long and short in turn, and differ by 0.04. */
    @Test
    void cycleToCycleJitter() {
        double[] instants = pulseInstants(60_000, 20, 200, 0.5);
        for (int k = 0; k < instants.length; k++) {
            instants[k] += k / 2 % 2 == 0 ? 0 : 0.02;
        }
        Pulses pulses = Pulses.of(Signals.steps(60_000, instants, 0, 1, 2), RATE_HZ);
        assertThat(pulses.cycleToCycleSeconds().rms()).isCloseTo(0.04 / RATE_HZ, within(1e-4 * 0.04 / RATE_HZ));
        assertThat(pulses.periodSeconds().rms()).isCloseTo(0.02 / RATE_HZ, within(1e-4 * 0.02 / RATE_HZ));
    }

    /** A linear sag over each pulse is its own tilt; a bump after each rise is its own overshoot. */
    @Test
    void tiltAndOvershoot() {
        double[] instants = pulseInstants(60_000, 20, 1000, 0.5);
        double[] square = Signals.steps(60_000, instants, 0, 1, 2);
        double[] tilted = square.clone();
        double[] bumped = square.clone();
        for (int i = 0; i < square.length; i++) {
            double into = (i - 20) % 1000.0;
            tilted[i] += into > 0 && into < 500 ? (0.5 - into / 500) * 0.06 * square[i] : 0;
            bumped[i] += 0.08 * Math.exp(-0.5 * Math.pow((into - 40) / 8, 2))
                    - 0.05 * Math.exp(-0.5 * Math.pow((into - 540) / 8, 2));
        }
        // the sag is exact in the middle 80 %, and the given levels are those without it
        assertThat(Pulses.of(tilted, RATE_HZ, new StateLevels(0, 1)).tiltPercent().mean()).isCloseTo(6, within(1e-6));
        // the bumps' tops fall on samples
        Pulses pulses = Pulses.of(bumped, RATE_HZ);
        assertThat(pulses.overshootPercent().mean()).isCloseTo(8, within(1e-6));
        assertThat(pulses.undershootPercent().mean()).isCloseTo(5, within(1e-6));
    }

    /**
     * Noise of 5 % on slow edges crosses the middle several times; each edge still counts once. A crossing moves by
     * noise / slope (0.05 / 0.02 a frame = 2.5 frames); six sigma for the worst of 200.
     */
    @Test
    void noiseMakesNoExtraEdges() {
        double[] instants = pulseInstants(100_000, 100, 1000, 0.5);
        double[] volts = Signals.withNoise(Signals.steps(100_000, instants, 0, 1, 20), 0.05, 7);
        Pulses pulses = Pulses.of(volts, RATE_HZ);
        double[] rising = pulses.risingSeconds();
        // the first rise is too near to the start to be read
        assertThat(rising).hasSize(98);
        for (int k = 0; k < rising.length; k++) {
            assertThat(rising[k] * RATE_HZ).isCloseTo(1100 + 1000 * k, within(15.0));
        }
        // the shorth's mean lies within the densest half: 0.67 sigma of noise at most
        assertThat(pulses.levels().highVolts()).isCloseTo(1, within(0.034));
    }

    /** Random pulse widths, each far apart: every single duration is what was drawn. */
    @Test
    void everyPulseForItself() {
        Random random = new Random(3);
        double[] instants = new double[400];
        double at = 300;
        for (int k = 0; k < instants.length; k++) {
            instants[k] = at;
            at += 40 + 100 * random.nextDouble();
        }
        int frames = (int) at + 400;
        Pulses pulses = Pulses.of(Signals.steps(frames, instants, 1, -1, 2), RATE_HZ);
        // from high to low first: rises are the odd ones
        assertThat(pulses.fallingSeconds()).hasSize(200);
        assertThat(pulses.risingSeconds()).hasSize(200);
        for (int k = 0; k < 200; k++) {
            assertThat(pulses.fallingSeconds()[k] * RATE_HZ).isCloseTo(instants[2 * k], within(2e-6));
            assertThat(pulses.risingSeconds()[k] * RATE_HZ).isCloseTo(instants[2 * k + 1], within(2e-6));
        }
    }

    @Test
    void aSignalThatNeverMovesIsSaid() {
        assertThatThrownBy(() -> Pulses.of(new double[1000], RATE_HZ))
                .isInstanceOf(Refused.class).hasMessageContaining("stays at 0 V");
        assertThatThrownBy(() -> new StateLevels(1, 1)).isInstanceOf(Refused.class);
    }
}
