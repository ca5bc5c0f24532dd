package understudy.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import understudy.pattern.Pattern;
import understudy.pattern.PatternLibrary;
import understudy.refusal.Refusals;
import understudy.wave.VoltSource;

class ChannelMapTest {

    @Test
    void everyChannelCarriesItsOutputHoweverTheBlocksAreCut() {
        VoltSource channels = new ChannelMap(List.of(1, ChannelMap.SILENT, 0, 1)).route(new Counter());
        int frame = 0;
        for (int block : new int[] {1, 7, 0, 1024, 1025, 5000}) {
            double[][] volts = new double[4][block + 3];
            Arrays.stream(volts).forEach(channel -> Arrays.fill(channel, 99));
            channels.render(volts, block);
            for (int i = 0; i < block; i++, frame++) {
                assertThat(volts[0][i]).isEqualTo(-frame);
                assertThat(volts[1][i]).isZero();
                assertThat(volts[2][i]).isEqualTo(frame);
                assertThat(volts[3][i]).isEqualTo(-frame);
            }
            assertThat(volts[2][block]).as("beyond the frames asked for").isEqualTo(99);
        }
    }

    @Test
    void aNumberAddsSilentChannelsBehindTheOutputs() {
        Pattern pattern = PatternLibrary.open().find("crank-36-1-cam-1-hall").value().orElseThrow();
        Refusals given = new Refusals();
        assertThat(ChannelMap.read("4", pattern, given).outputs()).containsExactly(0, 1, ChannelMap.SILENT, ChannelMap.SILENT);
        assertThat(ChannelMap.read("cam, crank", pattern, given).outputs()).containsExactly(1, 0);
        assertThat(ChannelMap.read("-,cam,cam", pattern, given).outputs()).containsExactly(ChannelMap.SILENT, 1, 1);
        assertThat(ChannelMap.all(pattern).outputs()).containsExactly(0, 1);
        given.refuse();
    }

    /** Counts frames: upwards on its first channel, downwards on its second. */
    private static final class Counter implements VoltSource {
        private int frame;

        @Override
        public int channels() {
            return 2;
        }

        @Override
        public int rateHz() {
            return 48_000;
        }

        @Override
        public void render(double[][] volts, int frames) {
            for (int i = 0; i < frames; i++, frame++) {
                volts[0][i] = frame;
                volts[1][i] = -frame;
            }
        }
    }
}
