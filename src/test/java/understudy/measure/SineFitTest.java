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

class SineFitTest {

    /** Without noise only rounding is left: 1e-13 of amplitude, and a phase error of that turned over N/2 frames. */
    @ParameterizedTest
    @CsvSource({"1000, 48000", "997.77, 48000", "40.3, 48000", "19999.99, 4096", "3.3, 480000", "440.1, 2000"})
    void exactWithoutNoise(double hz, int frames) {
        double[] volts = Signals.sampled(frames, t -> 0.25 + 0.8 * Math.cos(2 * Math.PI * hz * t - 2.2));
        SineFit fit = SineFit.fourParameters(volts, RATE_HZ);
        assertThat(fit.frequencyHz()).isCloseTo(hz, within(1e-11 * hz + 1e-10));
        assertThat(fit.amplitudeVolts()).isCloseTo(0.8, within(1e-10));
        assertThat(fit.phaseRad()).isCloseTo(-2.2, within(1e-8));
        assertThat(fit.offsetVolts()).isCloseTo(0.25, within(1e-10));
        assertThat(fit.residualRmsVolts()).isLessThan(1e-10);
    }

    /**
     * 1 kHz, 48 kHz, 1 s, 60 dB: the spread of 300 fits against the Cramer-Rao bound, written anew here. A spread of
     * 300 draws is known to 1/sqrt(600), 4.1 %: 4 sigma are 16 %.
     */
    @Test
    void reachesTheCramerRaoBound() {
        int n = 48_000;
        int runs = 300;
        double amplitude = 0.5;
        double noise = amplitude / Math.sqrt(2) / 1000;
        Random random = new Random(4);
        double[] squares = new double[4];
        double[] told = new double[4];
        double worst = 0;
        for (int run = 0; run < runs; run++) {
            double hz = 1000 + random.nextDouble();
            double phase = 3 * random.nextDouble();
            double[] volts = Signals.withNoise(
                    Signals.sampled(n, t -> 0.01 + amplitude * Math.cos(2 * Math.PI * hz * t + phase)), noise, run);
            SineFit fit = SineFit.fourParameters(volts, RATE_HZ);
            double[] misses = {fit.frequencyHz() - hz, fit.amplitudeVolts() - amplitude, fit.phaseRad() - phase,
                fit.offsetVolts() - 0.01};
            double[] expected = {fit.frequencyUncertaintyHz(), fit.amplitudeUncertaintyVolts(),
                fit.phaseUncertaintyRad(), fit.offsetUncertaintyVolts()};
            for (int k = 0; k < 4; k++) {
                squares[k] += misses[k] * misses[k] / runs;
                told[k] += expected[k] / runs;
            }
            worst = Math.max(worst, Math.abs(misses[0]) / hz);
        }
        double ratio = noise / amplitude;
        double[] bound = {
            RATE_HZ / (2 * Math.PI) * ratio * Math.sqrt(24 / Math.pow(n, 3)),
            noise * Math.sqrt(2.0 / n),
            ratio * Math.sqrt(8.0 / n), // at the first sample: twice that of the middle
            noise / Math.sqrt(n)};
        System.out.printf("sine fit, 1 kHz 48 kHz 60 dB 1 s: frequency rms %.5f ppm, bound %.5f ppm, worst of %d %.5f ppm%n",
                Math.sqrt(squares[0]) / 1000 * 1e6, bound[0] / 1000 * 1e6, runs, worst * 1e6);
        for (int k = 0; k < 4; k++) {
            assertThat(Math.sqrt(squares[k]) / bound[k]).as("parameter " + k).isBetween(0.84, 1.16);
            assertThat(told[k] / bound[k]).as("told uncertainty " + k).isCloseTo(1, within(0.01));
        }
        // 0.01 ppm is 3.97 sigma of the bound: one fit in 14 000 misses it
        assertThat(worst).isLessThan(0.01e-6);
    }

    /** Three parameters: the same sums, solved for a known frequency; the residual of pure noise is the noise. */
    @Test
    void threeParametersAtAKnownFrequency() {
        double[] volts = Signals.withNoise(
                Signals.sampled(48_000, t -> 0.3 * Math.cos(2 * Math.PI * 123.4 * t + 1)), 1e-3, 5);
        SineFit fit = SineFit.threeParameters(volts, RATE_HZ, 123.4);
        // four standard deviations: amplitude 1e-3 sqrt(2/N), residual 1e-3/sqrt(2N)
        assertThat(fit.amplitudeVolts()).isCloseTo(0.3, within(4 * 6.5e-6));
        assertThat(fit.residualRmsVolts()).isCloseTo(1e-3, within(4 * 3.3e-6));
        assertThat(fit.sinadDb()).isCloseTo(20 * Math.log10(0.3 / Math.sqrt(2) / 1e-3), within(0.12));
        assertThat(fit.frequencyUncertaintyHz()).isZero();
    }

    @Test
    void whatHasNoToneIsSaid() {
        assertThatThrownBy(() -> SineFit.fourParameters(new double[1000], RATE_HZ))
                .isInstanceOf(Refused.class).hasMessageContaining("no tone");
        assertThatThrownBy(() -> SineFit.threeParameters(new double[1000], RATE_HZ, 24_000))
                .isInstanceOf(Refused.class).hasMessageContaining("below 24 kHz, got 24 kHz");
    }
}
