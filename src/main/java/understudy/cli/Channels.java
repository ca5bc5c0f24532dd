package understudy.cli;

import understudy.wave.VoltSource;

/** Puts the outputs of a source onto channels in another order, with silent channels in between. */
final class Channels implements VoltSource {

    static final int SILENT = -1;
    private static final int BLOCK_FRAMES = 1024;

    private final VoltSource source;
    private final int[] outputOfChannel;
    private final double[][] block;

    /** @param outputOfChannel for each channel the source's channel that it carries, or {@link #SILENT} */
    Channels(VoltSource source, int[] outputOfChannel) {
        this.source = source;
        this.outputOfChannel = outputOfChannel.clone();
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
                for (int i = 0; i < some; i++) {
                    volts[channel][done + i] = output == SILENT ? 0 : block[output][i];
                }
            }
            done += some;
        }
    }
}
