package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import understudy.pattern.Pattern;
import understudy.pattern.PatternReader;
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
        hand.press(Keys.UP, 20);
        // 20 turns a second are 1200 rpm, an eighth of which is 150, whose round step is 100
        assertThat(rpm()).isCloseTo(1300, within(1e-9));
        // from now on the hand's own wish counts, though the speed that plays is still behind it
        hand.press(Keys.UP, 20.1);
        assertThat(rpm()).isCloseTo(1400, within(1e-9));
        hand.press(Keys.DOWN, 20.2);
        hand.press(Keys.LEFT, 20.2);
        // an eightieth of 1300 is 16.25, whose round step is 10
        assertThat(rpm()).isCloseTo(1290, within(1e-9));
        hand.press(Keys.RIGHT, 20.2);
        assertThat(rpm()).isCloseTo(1300, within(1e-9));
    }

    @Test
    void theLevelGoesDownToNothingAndBackToFull() {
        for (int i = 0; i < 30; i++) {
            hand.press('-', 10);
        }
        assertThat(reference.get().level()).isZero();
        for (int i = 0; i < 30; i++) {
            hand.press('+', 10);
        }
        assertThat(reference.get().level()).isEqualTo(1);
    }

    @Test
    void numbersSwitchTheirFaultsAndNothingElse() {
        assertThat(reference.get().faultsOn()).isEqualTo(0b10);
        hand.press('1', 10);
        assertThat(reference.get().faultsOn()).isEqualTo(0b11);
        hand.press('2', 10);
        assertThat(reference.get().faultsOn()).isEqualTo(0b01);
        for (int key : new int[] {'0', '3', '9', 'a', '\n', Keys.NONE, 0x1F600}) {
            assertThat(hand.press(key, 10)).isTrue();
        }
        assertThat(reference.get()).isEqualTo(new Hand(Double.NaN, 1, 0b01));
    }

    @Test
    void spaceAndQStop() {
        for (int key : new int[] {' ', 'q', 'Q', Keys.END_OF_INPUT}) {
            assertThat(hand.press(key, 10)).isFalse();
        }
    }

    private double rpm() {
        return pattern.speed().inUnit(reference.get().speedHz());
    }
}
