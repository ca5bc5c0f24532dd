package understudy.bench;

import java.util.Arrays;
import understudy.wave.VoltSource;

/** Puts the outputs of a source onto channels in another order, with silent channels in between. */
final class RoutedSource implements VoltSource {

    private static final int BLOCK_FRAMES = 1024;

    private final VoltSource source;
    private final int[] outputOfChannel;
    private final double[][] block;

    RoutedSource(VoltSource source, ChannelMap map) {
        this.source = source;
        this.outputOfChannel = map.outputs().stream().mapToInt(Integer::intValue).toArray();
        this.block = new double[source.channels()][BLOCK_FRAMES];
    }

    @Override
    public int channels() {
        return outputOfChannel.length;
    }

    @Override
    public int rateHz() {
        return source.rateHz();
    }

    @Override
    public void render(double[][] volts, int frames) {
        for (int done = 0; done < frames; ) {
            int some = Math.min(BLOCK_FRAMES, frames - done);
            source.render(block, some);
            for (int channel = 0; channel < outputOfChannel.length; channel++) {
                int output = outputOfChannel[channel];
                if (output == ChannelMap.SILENT) {
                    Arrays.fill(volts[channel], done, done + some, 0);
                } else {
                    System.arraycopy(block[output], 0, volts[channel], done, some);
                }
            }
            done += some;
        }
    }
}
