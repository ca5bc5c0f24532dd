package understudy.wave;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.pattern.Pattern;
import understudy.pattern.Tone;

/** What is left of the swing, against what the renderer really gives between neighbouring teeth. */
class FitTest {
    private static final int RATE = 48_000;

    @ParameterizedTest
    @CsvSource({"3000", "6000", "8000"})
    void hallSwingIsThatBetweenNeighbouringTeeth(double rpm) {
        Pattern pattern = Patterns.of(Patterns.hall(60, 2));
        double[] volts = Patterns.render(Patterns.renderer(pattern, RATE, rpm / 60), 40_000, 256)[0];
        Reconstruction signal = new Reconstruction(volts);
        double least = 1;
        // middles of teeth 10 to 40 and of the gaps behind them, in the fifth turn
        for (int tooth = 10; tooth < 40; tooth++) {
            double high = signal.at((4 + (tooth + 0.25) / 60) / (rpm / 60) * RATE);
            double low = signal.at((4 + (tooth + 0.75) / 60) / (rpm / 60) * RATE);
            least = Math.min(least, (high - low) / 2.4);
        }
        // solved edges move by up to 0.3 us at 8000 rpm, 0.5 % of a tooth, and teeth beside the gap keep a little more
        assertThat(Fit.leastSwing(pattern, RATE, rpm / 60)).isCloseTo(least, within(0.01));
    }

    @Test
    void reluctorSwingIsWhatAWiderPoleLeaves() {
        Pattern pattern = Patterns.of(Patterns.reluctor(60, 2, 0.2));
        // 0.2 pitches are 1.5 frames at 6400 rpm; below, nothing is lost
        assertThat(Fit.leastSwing(pattern, RATE, 6390 / 60.0)).isEqualTo(1);
        // even teeth are all but a sine of the tooth rate: a bell of sigma s pitches leaves exp(-2 (pi s)^2) of it,
        // and its third harmonic less than a thousandth of that
        double wider = 0.2 * 8000 / 6400;
        double truth = Math.exp(-2 * Math.PI * Math.PI * (wider * wider - 0.04));
        assertThat(Fit.leastSwing(pattern, RATE, 8000 / 60.0)).isCloseTo(truth, within(0.02));
    }

    @Test
    void tonesAboveWhatAnOutputPassesAreRefusedWithTheRateThatWouldDo() {
        Pattern pattern = Patterns.of(new Tone(Tone.Shape.SINE, 30_000, Double.NaN, 2, 0, 0.5));
        Fit fit = Fit.of(pattern, RATE, 10).get(0);
        assertThat(fit.isRefused()).isTrue();
        // 30 kHz is within 0.44 of 88.2 kHz
        assertThat(fit.betterHz()).isEqualTo(88_200);
    }

    @Test
    void aWheelStandingStillLosesNothing() {
        assertThat(Fit.leastSwing(Patterns.of(Patterns.hall(60, 2), Patterns.reluctor(36, 1, 0.2)), RATE, 0)).isEqualTo(1);
    }
}
