package understudy.audio;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.function.DoubleConsumer;
import understudy.refusal.Refused;

/**
 * Sound to be measured.
 *
 * @param from     what to call where it is from
 * @param rateHz   frames a second
 * @param bits     of a sample
 * @param channels one array a channel, fractions of full scale
 * @param ofSeconds how long all of it is; more than what is here if only the beginning was asked for
 * @param live     from an input just now, not from a file
 */
public record Recorded(String from, int rateHz, int bits, double[][] channels, double ofSeconds, boolean live) {

    /** How many channels a live input is opened with; what a stereo plug needs. */
    private static final int[] LIVE_CHANNELS = {2, 1};
    private static final long LOOK_MILLIS = 20;

    public double seconds() {
        return (double) channels[0].length / rateHz;
    }

    /** The beginning of a file, {@code seconds} long or to its end. */
    public static Recorded ofFile(Path file, double seconds) {
        try (WavReader reader = WavReader.open(file)) {
            int frames = (int) Math.min(reader.frames(), Math.round(seconds * reader.rateHz()));
            double[][] samples = new double[reader.channels()][frames];
            reader.read(samples, frames);
            return new Recorded(file.toString(), reader.rateHz(), reader.format().bits(), samples,
                    (double) reader.frames() / reader.rateHz(), false);
        } catch (IOException e) {
            throw Refused.setup(file.toString(), "cannot be read: " + e.getMessage(), "", e);
        }
    }

    /**
     * What comes in at an input from now on.
     *
     * @param progress is shown the part that has been recorded, 0 to 1, now and then
     */
    public static Recorded live(Device input, int rateHz, double seconds, DoubleConsumer progress) {
        long wanted = Math.round(seconds * rateHz);
        try (Recorder recorder = open(input, rateHz)) {
            recorder.start();
            while (recorder.frames() < wanted && !recorder.ended()) {
                Thread.sleep(LOOK_MILLIS);
                progress.accept((double) recorder.frames() / wanted);
            }
            Recorder.Recording recording = recorder.stop();
            if (recording.overruns() > 0) {
                throw Refused.setup("audio input \"" + input.label() + "\": samples may have been lost on the way, "
                        + recording.overruns() + " times", "close other programs, then try again");
            }
            double[][] samples = Arrays.stream(recording.samples())
                    .map(channel -> Arrays.copyOf(channel, (int) Math.min(wanted, channel.length)))
                    .toArray(double[][]::new);
            return new Recorded("audio input \"" + input.label() + "\"", rateHz, recorder.format().bits(), samples,
                    (double) samples[0].length / rateHz, true);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw Refused.setup("the recording was interrupted", "", e);
        }
    }

    private static Recorder open(Device input, int rateHz) {
        try {
            return Recorder.toMemory(input, rateHz, LIVE_CHANNELS[0]);
        } catch (Refused stereo) {
            return Recorder.toMemory(input, rateHz, LIVE_CHANNELS[1]);
        }
    }
}
