package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BetweenTest {

    /** A Kaiser window of beta 14 leaves 1e-7 of a tone below 0.491 of the rate, and shapes nothing below it. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.001, 0.1, 0.333, 0.45, 0.485, 0.49})
    void tonesUpToTheEndOfTheBandComeBack(double partOfRate) {
        double[] samples = new double[2000];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = Math.cos(2 * Math.PI * partOfRate * i + 0.4);
        }
        Between between = new Between(samples);
        Random random = new Random(1);
        for (int k = 0; k < 500; k++) {
            double frame = 300 + 1400 * random.nextDouble();
            assertThat(between.at(frame)).isCloseTo(Math.cos(2 * Math.PI * partOfRate * frame + 0.4), within(2e-7));
        }
    }
}
