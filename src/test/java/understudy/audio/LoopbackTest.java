package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import understudy.rig.OutputScale;

class LoopbackTest {

    private static final OutputScale ONE_VOLT = new OutputScale(1, true);

    /** The counter's 24-bit numbers pass 32 bits unchanged; outside the fades of 480 frames every bit comes back. */
    @Test
    void everyBitComesBack() throws IOException, InterruptedException {
        try (LoopbackCard card = LoopbackCard.start()) {
            double[][] heard = card.hear(() -> Sources.counter(2, 48000), ONE_VOLT,
                    PlayerSettings.DEFAULT.withTargetFill(LoopbackCard.BUSY_FILL).withDuration(Duration.ofSeconds(2)));
            assertThat(heard[0].length).isBetween(95_990, 96_000);
            double[][] sent = new double[2][96_000];
            Sources.counter(2, 48000).render(sent, 96_000);
            int shift = find(sent[0], heard[0]);
            for (int c = 0; c < 2; c++) {
                for (int i = 480; i < 96_000 - 480; i++) {
                    if (heard[c][i - shift] != sent[c][i]) {
                        throw new AssertionError("channel " + c + " frame " + i + ": " + heard[c][i - shift] + " for " + sent[c][i]);
                    }
                }
            }
        }
    }

    private static int find(double[] sent, double[] heard) {
        for (int shift = 0; shift < 480; shift++) {
            if (heard[48_000 - shift] == sent[48_000]) {
                return shift;
            }
        }
        throw new AssertionError("what was sent is nowhere to be found");
    }
}
