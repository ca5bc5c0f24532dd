package understudy.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import understudy.refusal.Refused;

/** Parts that can't be, and inputs that no rig can serve, are refused in plain words. */
class PartsTest {

    @Test
    void impossiblePartsAreNamedWithWhatIsAllowed() {
        assertThatThrownBy(() -> new Divider(Spread.exactly(-4700), Optional.empty(), new Coupling.Direct()))
                .isInstanceOf(Refused.class)
                .hasMessage("the series resistor is given as -4.7 kohm; allowed are 1 mohm to 1 Gohm");
        assertThatThrownBy(() -> new Divider(Spread.exactly(4700), Optional.of(Spread.exactly(0)), new Coupling.Direct()))
                .hasMessage("the shunt resistor is given as 0 ohm; allowed are 1 mohm to 1 Gohm");
        assertThatThrownBy(() -> new Spread(1, 1.5)).hasMessage("the tolerance is given as 1.5; allowed are 0.0 to 0.9");
        assertThatThrownBy(() -> Spread.exactly(Double.NaN)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Coupling.Capacitor(Spread.exactly(5)))
                .hasMessage("the series capacitor is given as 5 F; allowed are 0.1 pF to 1 F");
        assertThatThrownBy(() -> new FrontEnd.Clamp(5, -0.5, 10)).hasMessageContaining("the clamps meet");
        assertThatThrownBy(() -> new PulledUpInput(Spread.exactly(5), Spread.exactly(1000), 3.8, 2, FrontEnd.BARE))
                .hasMessageContaining("low below 3.8 V and high above 2.0 V");
        assertThatThrownBy(() -> new Arming.Hysteresis(0.2, -0.2)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new Use(1.2, 0.5, 0.5)).hasMessageContaining("the level is given as 1.2");
        assertThatThrownBy(() -> new Connection(
                new Rig(new AudioOutput(Spread.exactly(1), Spread.exactly(100), Optional.empty(), false, 0),
                        new Divider(Spread.exactly(1000), Optional.empty(), new Coupling.Direct()), Lead.USUAL),
                InputKind.RESISTIVE.usual()).fromRest(0)).isInstanceOf(Refused.class);
    }

    @Test
    void inputsOutOfReachAreRefusedWithTheReason() {
        assertThatThrownBy(InputKind.TWO_WIRE_CURRENT::usual)
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("no passive rig can stand in for a two-wire active sensor: the module feeds it");
        for (InputKind kind : InputKind.values()) {
            assertThat(kind.words()).isNotBlank();
            if (kind.isOutOfReach()) {
                assertThatThrownBy(kind::usual).isInstanceOf(Refused.class);
            } else {
                assertThat(kind.usual()).isNotNull();
                assertThat(kind.source()).contains("compare with a known-good sensor");
            }
        }
    }
}
