package understudy.audio;

import java.nio.file.Path;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.LongConsumer;
import understudy.rig.OutputScale;
import understudy.wave.VoltSource;
import understudy.refusal.Refused;

/**
 * Writes what a source gives to a WAV file, as fast as it comes. A file is not faded in or out: it holds the signal
 * exactly, so that it can be measured, compared and looped.
 */
public final class WavRender {

    /** Large enough that handing a block over costs nothing, small enough to stay in the cache. */
    private static final int BLOCK_FRAMES = 16_384;

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
     * @throws Refused when the file cannot be written
     */
    public static Summary write(
            VoltSource source, OutputScale scale, int channels, SampleFormat format, long frames, Path target,
            LongConsumer progress) {
        var stage = new OutputStage(scale, source.channels(), channels, format, false, source.rateHz(), true);
        byte[] bytes = new byte[BLOCK_FRAMES * stage.frameBytes()];
        // one block is packed and written while the next is rendered
        double[][][] blocks = new double[2][source.channels()][BLOCK_FRAMES];
        ExecutorService packer = Executors.newSingleThreadExecutor(WavRender::daemon);
        try (WavWriter file = WavWriter.create(target, channels, source.rateHz(), format)) {
            file.reserve(Math.multiplyExact(frames, (long) stage.frameBytes()));
            Future<?> underWay = null;
            int turn = 0;
            for (long done = 0; done < frames; turn ^= 1) {
                double[][] volts = blocks[turn];
                int block = (int) Math.min(BLOCK_FRAMES, frames - done);
                source.render(volts, block);
                await(underWay);
                underWay = packer.submit(() -> {
                    int length = stage.pack(volts, block, bytes);
                    if (stage.tripped()) {
                        throw new IllegalStateException(target + ": the signal is not a number at frame "
                                + stage.trippedAtFrame() + "; nothing was kept; this is a defect in Understudy");
                    }
                    file.write(bytes, length);
                    return null;
                });
                done += block;
                progress.accept(done);
            }
            await(underWay);
            file.commit();
            return new Summary(frames, file.dataBytes(), stage.peak(), stage.clippedSamples());
        } finally {
            packer.shutdownNow();
        }
    }

    private static Thread daemon(Runnable work) {
        Thread thread = new Thread(work, "file-packer");
        thread.setDaemon(true);
        return thread;
    }

    /** Waits for a block to be written, and throws here what went wrong there. */
    private static void await(Future<?> block) {
        if (block == null) {
            return;
        }
        try {
            block.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof Refused failed) {
                throw failed;
            }
            throw e.getCause() instanceof RuntimeException defect ? defect : new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while writing", e);
        }
    }
}
