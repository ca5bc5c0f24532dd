package understudy.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import understudy.cli.Samples;
import understudy.pattern.Pattern;
import understudy.pattern.PatternReader;
import understudy.refusal.Refused;
import understudy.wave.Hand;
import understudy.wave.Renderer;

class LiveHandTest {

    private final Pattern pattern = PatternReader.read("wheel.yaml", Samples.WHEEL
            + "faults:\n  - {fault: missing tooth, tooth: 2, switched: off}\n  - {fault: dropout, length: 10 ms}\n").value().orElseThrow();
    private final AtomicReference<Hand> reference = new AtomicReference<>(Renderer.startingHand(pattern));
    private final LiveHand hand = new LiveHand(pattern, reference);

    @Test
    void theFirstSpeedKeyTakesOverFromTheSpeedThatPlays() {
        assertThat(reference.get().speedHz()).isNaN();
        hand.faster(20, false);
        // 20 turns a second are 1200 rpm, an eighth of which is 150, whose round step is 100
        assertThat(rpm()).isCloseTo(1300, within(1e-9));
        // from now on the hand's own wish counts, though the speed that plays is still behind it
        hand.faster(20.1, false);
        assertThat(rpm()).isCloseTo(1400, within(1e-9));
        hand.slower(20.2, false);
        hand.slower(20.2, true);
        // an eightieth of 1300 is 16.25, whose round step is 10
        assertThat(rpm()).isCloseTo(1290, within(1e-9));
        hand.faster(20.2, true);
        assertThat(rpm()).isCloseTo(1300, within(1e-9));
    }

    @Test
    void theLevelGoesDownToNothingAndBackToFull() {
        for (int i = 0; i < 30; i++) {
            hand.quieter();
        }
        assertThat(reference.get().level()).isZero();
        for (int i = 0; i < 30; i++) {
            hand.louder();
        }
        assertThat(reference.get().level()).isEqualTo(1);
    }

    @Test
    void numbersSwitchTheirFaultsAndNothingElse() {
        assertThat(reference.get().faultsOn()).isEqualTo(0b10);
        hand.toggleFault(0);
        assertThat(reference.get().faultsOn()).isEqualTo(0b11);
        hand.toggleFault(1);
        assertThat(reference.get().faultsOn()).isEqualTo(0b01);
        for (int index : new int[] {-1, 2, 8, 64}) {
            hand.toggleFault(index);
        }
        assertThat(reference.get()).isEqualTo(new Hand(Double.NaN, 1, 0b01));
    }

    @Test
    void aSpeedIsTyped() {
        hand.speed("1234 rpm");
        assertThat(rpm()).isCloseTo(1234, within(1e-9));
        assertThatThrownBy(() -> hand.speed("1234567 rpm")).isInstanceOf(Refused.class);
        assertThat(rpm()).as("a refused speed changes nothing").isCloseTo(1234, within(1e-9));
    }

    private double rpm() {
        return pattern.speed().inUnit(reference.get().speedHz());
    }
}
