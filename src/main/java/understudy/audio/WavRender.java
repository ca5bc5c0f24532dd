package understudy.audio;

import java.nio.file.Path;
import java.util.function.LongConsumer;
import understudy.rig.OutputScale;
import understudy.wave.VoltSource;

/**
 * Writes what a source gives to a WAV file, as fast as it comes. A file is not faded in or out: it holds the signal
 * exactly, so that it can be measured, compared and looped.
 */
public final class WavRender {

    private static final int BLOCK_FRAMES = 4096;

    private WavRender() {}

    /**
     * What became of it.
     *
     * @param frames         frames written
     * @param dataBytes      bytes of samples
     * @param peakOfFullScale largest fraction of full scale asked for; above 1 it was held at 1
     * @param clippedSamples samples held at full scale
     */
    public record Summary(long frames, long dataBytes, double peakOfFullScale, long clippedSamples) {}

    /**
     * Writes {@code frames} frames. The file appears only when it is complete; an exception or the end of the program
     * leaves nothing.
     *
     * @param channels of the file, at least as many as the source has; those beyond are silent
     * @param format   any but {@link SampleFormat#PCM24_IN_4}
     * @param progress told the frames written so far after every block, on the calling thread; it may throw to give up
     * @throws AudioException when the file cannot be written
     */
    public static Summary write(
            VoltSource source, OutputScale scale, int channels, SampleFormat format, long frames, Path target,
            LongConsumer progress) throws AudioException {
        var stage = new OutputStage(scale, source.channels(), channels, format, false, source.rateHz(), true);
        double[][] volts = new double[source.channels()][BLOCK_FRAMES];
        byte[] bytes = new byte[BLOCK_FRAMES * stage.frameBytes()];
        try (WavWriter file = WavWriter.create(target, channels, source.rateHz(), format)) {
            file.reserve(Math.multiplyExact(frames, (long) stage.frameBytes()));
            for (long done = 0; done < frames; ) {
                int block = (int) Math.min(BLOCK_FRAMES, frames - done);
                source.render(volts, block);
                int length = stage.pack(volts, block, bytes);
                if (stage.tripped()) {
                    throw new IllegalStateException(target + ": the signal is not a number at frame "
                            + stage.trippedAtFrame() + "; nothing was kept; this is a defect in Understudy");
                }
                file.write(bytes, length);
                done += block;
                progress.accept(done);
            }
            file.commit();
            return new Summary(frames, file.dataBytes(), stage.peak(), stage.clippedSamples());
        }
    }
}
