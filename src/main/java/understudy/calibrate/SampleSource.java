package understudy.calibrate;

import understudy.wave.VoltSource;

/** Plays samples on one channel, over and over if asked; the channels before it are silent. */
final class SampleSource implements VoltSource {

    private final double[] samples;
    private final int rateHz;
    private final int channel;
    private final boolean repeated;
    private int at;

    /** @param channel that sounds, from 0 */
    SampleSource(double[] samples, int rateHz, int channel, boolean repeated) {
        this.samples = samples;
        this.rateHz = rateHz;
        this.channel = channel;
        this.repeated = repeated;
    }

    @Override
    public int channels() {
        return channel + 1;
    }

    @Override
    public int rateHz() {
        return rateHz;
    }

    @Override
    public void render(double[][] volts, int frames) {
        for (int c = 0; c < channel; c++) {
            for (int i = 0; i < frames; i++) {
                volts[c][i] = 0;
            }
        }
        for (int i = 0; i < frames; i++) {
            at = repeated && at == samples.length ? 0 : at;
            volts[channel][i] = at < samples.length ? samples[at++] : 0;
        }
    }
}
