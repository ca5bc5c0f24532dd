package understudy.preflight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FinerTest {

    /** Cycles a frame; the filter passes all up to 0.44. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.01, 0.1, 0.25, 0.4, 0.43})
    void putsValuesBetweenTheSamplesWhereTheSineWas(double frequency) {
        double[] samples = new double[200];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = Math.cos(2 * Math.PI * frequency * i + 0.3);
        }
        for (int factor : new int[] {2, 4, 16}) {
            double[] fine = new Finer(factor).between(samples, 50, 150);
            assertThat(fine).hasSize(100 * factor + 1);
            for (int i = 0; i < fine.length; i++) {
                // a window of 90 dB: 3e-5 of what would come through at each side of the band
                double expected = Math.cos(2 * Math.PI * frequency * (50 + (double) i / factor) + 0.3);
                assertThat(fine[i]).isCloseTo(expected, within(6e-5));
            }
        }
    }
}
