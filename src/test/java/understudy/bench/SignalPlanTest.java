package understudy.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.pattern.Pattern;
import understudy.pattern.PatternReader;
import understudy.text.Source;

class SignalPlanTest {

    /** A sine of 1 V peak to peak has 0.5 V / sqrt 2 rms, whatever its offset; a square of the same swing 0.5 V. */
    @ParameterizedTest
    @CsvSource({"sine, 0 V, 0.35355339", "sine, 0.3 V, 0.35355339", "square, 0 V, 0.5"})
    void theVoltsThatAreDueAtTheClipsAreTheSignalsOwn(String shape, String offset, double rms) {
        String pattern = """
                title: Test tone
                purpose: Has a known effective value.
                source: Made up.
                speed: {default: 100 Hz, from: 1 Hz, to: 1000 Hz}
                outputs:
                  - name: tone
                    tone: {shape: %s, cycles-per-turn: 1, peak-to-peak: 1 V, offset: %s}
                """.formatted(shape, offset);
        Pattern tone = PatternReader.read(new Source("tone.yaml", pattern)).value().orElseThrow();
        SignalPlan plan = SignalPlan.steady(tone, tone.outputs().get(0), 100, 48_000, Optional.empty(), false);
        // whole cycles are summed; a square's edges are 2.56 * 1.5 of 240 samples long, twice a cycle of 480: below 1 %
        assertThat(plan.alternatingVolts()).isCloseTo(rms, within(shape.equals("sine") ? 1e-6 : 0.01 * rms));
    }
}
