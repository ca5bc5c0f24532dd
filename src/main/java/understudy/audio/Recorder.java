package understudy.audio;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Path;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.TargetDataLine;
import understudy.refusal.Refused;

/**
 * Records from an input, into memory or a WAV file, in the best format that the input opens with.
 *
 * <p>A reader thread drains the line, which holds two seconds. Any thread may call the rest.
 */
public final class Recorder implements AutoCloseable {

    private static final int BUFFER_SECONDS = 2;
    /** Of the buffer: from here on samples may already be lost, since no system says so. */
    private static final double OVERRUN_PART = 0.95;
    private static final List<SampleFormat> BEST_FIRST =
            List.of(SampleFormat.PCM32, SampleFormat.PCM24, SampleFormat.PCM16);
    private static final long LOOK_NANOS = 5_000_000;
    private static final long LOST_AFTER_NANOS = 3_000_000_000L;

    /** Where the bytes go. */
    private interface Store {
        void take(byte[] bytes, int length);
    }

    /**
     * What was recorded.
     *
     * @param frames    frames kept
     * @param mostAtOnceFrames handed over by the system at once, at most: so much later a frame may be counted than it came
     * @param overruns  times that samples may have been lost because nobody fetched them
     * @param onlyZeros nothing but zeros for a second and more: muted, or no permission to record
     * @param samples   one array a channel, fractions of full scale; no arrays when it went to a file
     */
    public record Recording(long frames, int mostAtOnceFrames, int overruns, boolean onlyZeros, double[][] samples) {}

    private final TargetDataLine line;
    private final SampleFormat format;
    private final Device device;
    private final Store store;
    private final ByteArrayOutputStream memory;
    private final WavWriter file;
    private final Thread reader = new Thread(this::drain, "audio-reader");
    private volatile boolean stopping;
    private volatile long frames;
    private volatile int mostAtOnceFrames;
    private volatile int overruns;
    private volatile boolean heardSomething;
    private volatile Refused failure;

    private Recorder(Device device, TargetDataLine line, SampleFormat format, WavWriter file) {
        this.device = device;
        this.line = line;
        this.format = format;
        this.file = file;
        this.memory = file == null ? new ByteArrayOutputStream(1 << 20) : null;
        this.store = file == null ? (bytes, length) -> memory.write(bytes, 0, length) : file::write;
        reader.setDaemon(true);
    }

    /** @throws Refused when the input does not open so */
    public static Recorder toMemory(Device input, int rateHz, int channels) {
        return open(input, rateHz, channels, null);
    }

    /** The file appears with {@link #stop}; an end without it leaves none. */
    public static Recorder toFile(Device input, int rateHz, int channels, Path target) {
        return open(input, rateHz, channels, target);
    }

    private static Recorder open(Device input, int rateHz, int channels, Path target) {
        Exception last = null;
        for (SampleFormat format : BEST_FIRST) {
            int frameBytes = channels * format.bytes();
            var audioFormat = new AudioFormat(
                    AudioFormat.Encoding.PCM_SIGNED, rateHz, format.bits(), channels, frameBytes, rateHz, false);
            try {
                TargetDataLine line = Devices.open(input, audioFormat, BUFFER_SECONDS * rateHz);
                try {
                    WavWriter file = target == null ? null : WavWriter.create(target, channels, rateHz, format);
                    return new Recorder(input, line, format, file);
                } catch (Refused e) {
                    line.close();
                    throw e;
                }
            } catch (LineUnavailableException | IllegalArgumentException e) {
                last = e;
            }
        }
        throw Refused.setup("audio input \"" + input.label() + "\" does not open with " + channels + " channels at "
                + rateHz + " Hz" + Devices.reasonAfterColon(last), "close other programs that use it, then try again", last);
    }

    public SampleFormat format() {
        return format;
    }

    /** Frames so far. */
    public long frames() {
        return frames;
    }

    /** True once it has been lost, or stopped; {@link #stop} then tells. */
    public boolean ended() {
        return stopping || failure != null;
    }

    /** What has been recorded up to now, as {@link #stop} would hand it over; in memory only. */
    public double[][] soFar() {
        return samples();
    }

    /** Begins to record. Once only. */
    public void start() {
        line.start();
        reader.start();
    }

    /**
     * Ends the recording and hands it over.
     *
     * @throws Refused when the input was lost on the way, or the file could not be written
     */
    public Recording stop() throws InterruptedException {
        end();
        reader.join(LineCloser.PATIENCE.toMillis());
        if (failure != null) {
            close();
            throw failure;
        }
        if (file != null) {
            file.commit();
        }
        boolean onlyZeros = !heardSomething && frames >= (long) line.getFormat().getFrameRate();
        return new Recording(frames, mostAtOnceFrames, overruns, onlyZeros, file == null ? samples() : new double[0][]);
    }

    /** Ends without keeping anything, unless {@link #stop} came before. */
    @Override
    public void close() {
        end();
        if (file != null) {
            file.close();
        }
    }

    private void end() {
        if (!stopping) {
            stopping = true;
            LineCloser.close(() -> {
                line.stop();
                line.flush();
                line.close();
            }, LineCloser.PATIENCE);
        }
    }

    private void drain() {
        int frameBytes = line.getFormat().getFrameSize();
        byte[] bytes = new byte[(int) (line.getFormat().getFrameRate() / 10) * frameBytes];
        long gotNanos = Clock.SYSTEM.nanos();
        try {
            while (!stopping) {
                int waiting = line.available();
                if (waiting >= OVERRUN_PART * line.getBufferSize()) {
                    overruns++;
                }
                // Only what is there: a read of more sleeps for up to a quarter of the buffer.
                int wanted = Math.min(bytes.length, waiting - waiting % frameBytes);
                int got = wanted > 0 ? line.read(bytes, 0, wanted) : 0;
                if (got > 0) {
                    gotNanos = Clock.SYSTEM.nanos();
                    store.take(bytes, got);
                    mostAtOnceFrames = Math.max(mostAtOnceFrames, got / frameBytes);
                    frames += got / frameBytes;
                    heardSomething = heardSomething || notOnlyZeros(bytes, got);
                } else if (Clock.SYSTEM.nanos() - gotNanos > LOST_AFTER_NANOS) {
                    throw Refused.setup("audio input \"" + device.label()
                            + "\" is lost: it gave no samples for 3 s", "check the plug, then start again");
                } else {
                    Clock.SYSTEM.pause(LOOK_NANOS);
                }
            }
        } catch (Refused e) {
            failure = e;
        }
    }

    private static boolean notOnlyZeros(byte[] bytes, int length) {
        for (int i = 0; i < length; i++) {
            if (bytes[i] != 0) {
                return true;
            }
        }
        return false;
    }

    private double[][] samples() {
        int channels = line.getFormat().getChannels();
        // once, and before the bytes: both grow meanwhile, the bytes first
        int whole = (int) frames;
        ByteBuffer bytes = ByteBuffer.wrap(memory.toByteArray()).order(ByteOrder.LITTLE_ENDIAN);
        double[][] samples = new double[channels][whole];
        for (int i = 0; i < whole; i++) {
            for (int c = 0; c < channels; c++) {
                samples[c][i] = format.read(bytes);
            }
        }
        return samples;
    }
}
