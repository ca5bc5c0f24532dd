package understudy.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.rig.Input;
import understudy.rig.InputKind;
import understudy.text.Source;

/** What is said of the volts on a pin before anything is clipped on. */
class PinLimitsTest {

    private static final String CIRCUIT = """
            title: Test circuit
            source: Made up.
            pattern: any
            reading: {shows: frequency, unit: Hz}
            path:
              - point: sensor
                reach: 1 min
              - wire: lead
              - point: pin
                reach: 1 min
            """;

    private static Circuit circuit(String more) {
        return CircuitReader.read(new Source("test.yaml", CIRCUIT + more)).value().orElseThrow();
    }

    private static PinLimits pins(InputKind kind) {
        return PinLimits.of(circuit(""), Optional.of(kind).map(InputKind::usual));
    }

    /** By hand: what holds the pins, with its tolerance, and 0.3 V of protection beyond it and below ground. */
    @ParameterizedTest
    @CsvSource({
        "RELUCTOR_ADAPTIVE,    -0.3, 0.3,   -,     false",
        "RELUCTOR_BIASED_PAIR, -0.3, 2.925, 2.075, true", // 2.5 V 5 %
        "RELUCTOR_ADAPTIVE_PAIR, -0.3, 2.115, 1.185, true", // 1.65 V 10 %
        "PULLED_UP_5_V,        -0.3, 5.55,  4.450, false", // 5 V 5 %
        "RESISTIVE,            -0.3, 5.5,   -,     false",
    })
    void theInputTellsWhatMayLieOnItsPins(InputKind kind, double from, double to, String due, boolean twoPins) {
        PinLimits pins = pins(kind);
        // 1e-12: a few roundings of doubles
        assertThat(pins.allowed().from()).isCloseTo(from, within(1e-12));
        assertThat(pins.allowed().to()).isCloseTo(to, within(1e-12));
        assertThat(pins.dueVolts().map(volts -> String.format("%.3f", volts)).orElse("-")).isEqualTo(due);
        assertThat(pins.twoPins()).contains(twoPins);
    }

    @Test
    void theCircuitFileGoesBeforeTheInput() {
        PinLimits pins = PinLimits.of(circuit("pin: {from: 0 V, to: 9 V}\n"), Optional.of(InputKind.PULLED_UP_5_V.usual()));
        assertThat(pins.words()).isEqualTo("0 V to 9 V (as the circuit file says)");
        assertThat(PinLimits.of(circuit(""), Optional.<Input>empty()).words())
                .isEqualTo("-0.3 V to 5.5 V (what an input of which nothing more is known bears)");
    }

    @Test
    void tooLittleWhereAPullUpIsDueIsDoubted() {
        assertThat(pins(InputKind.PULLED_UP_5_V).doubt(0.2)).hasValueSatisfying(doubt -> assertThat(doubt)
                .contains("at least 4.45 V is due").contains("the way to it may be broken"));
        assertThat(pins(InputKind.PULLED_UP_5_V).doubt(4.9)).isEmpty();
        assertThat(pins(InputKind.RELUCTOR_ADAPTIVE).doubt(0)).isEmpty();
    }
}
