package understudy.calibrate;

import java.time.Duration;
import java.util.function.DoubleConsumer;
import understudy.audio.AudioException;
import understudy.audio.Device;
import understudy.audio.DeviceChoice;
import understudy.audio.Player;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.PlayerSettings;
import understudy.audio.Recorder;
import understudy.rig.OutputScale;

/**
 * Plays a test program and records what comes back.
 *
 * @param channels       of the input, fractions of its full scale
 * @param startedAtFrame frames that had been recorded when playing began, to within what the system hands over at once
 * @param underruns      gaps while playing
 * @param overruns       times that recorded samples may have been lost
 * @param hardware       what the output's hardware ran at, where the system tells; else empty
 */
public record LoopbackRun(double[][] channels, long startedAtFrame, int underruns, int overruns, String hardware) {

    /** Latency matters to nobody here, gaps do. */
    static final Duration FILL = Duration.ofMillis(300);
    /** What is still on the way when the player has ended. */
    private static final long AFTER_MILLIS = 700;
    private static final long LOOK_MILLIS = 50;

    /**
     * @param output  and its format; its rate is the program's
     * @param channel that plays, from 0
     * @param input   to record from, at the same rate
     * @param inputChannel that the cable is plugged into, from 0
     * @param progress is told the part that is done, 0 to 1
     * @throws AudioException if a device doesn't open, or is lost on the way
     */
    public static LoopbackRun of(TestProgram program, DeviceChoice output, int channel, Device input, int inputChannel,
            DoubleConsumer progress) throws AudioException, InterruptedException {
        double[] samples = program.samples();
        PlayerSettings settings = PlayerSettings.DEFAULT.withTargetFill(FILL)
                .withDuration(Duration.ofNanos(Math.round(1e9 * samples.length / program.rateHz())));
        try (Recorder recorder = open(input, program.rateHz(), inputChannel);
                Player player = Player.open(() -> new SampleSource(samples, program.rateHz(), channel, false), OutputScale.PARTS,
                        output, settings)) {
            recorder.start();
            while (recorder.frames() == 0 && !recorder.ended()) {
                Thread.sleep(5);
            }
            long startedAt = recorder.frames();
            player.start();
            while (player.awaitEnd(Duration.ofMillis(LOOK_MILLIS)).isEmpty()) {
                progress.accept(Math.min(1, (double) player.status().framesPlayed() / samples.length));
            }
            PlayerReport report = player.awaitEnd();
            Thread.sleep(AFTER_MILLIS);
            Recorder.Recording recording = recorder.stop();
            if (report.end() instanceof PlayerEnd.Lost lost) {
                throw new CalibrationException(lost.reason());
            } else if (report.end() instanceof PlayerEnd.Fault fault) {
                throw new IllegalStateException("playing failed", fault.cause());
            }
            return new LoopbackRun(recording.samples(), startedAt, report.underrunCount(), recording.overruns(),
                    report.hardware());
        }
    }

    /** Both channels of a stereo plug, so that a wrong one can be told from silence; some inputs have but one. */
    private static Recorder open(Device input, int rateHz, int channel) throws AudioException {
        try {
            return Recorder.toMemory(input, rateHz, Math.max(2, channel + 1));
        } catch (AudioException stereo) {
            if (channel > 0) {
                throw stereo;
            }
            return Recorder.toMemory(input, rateHz, 1);
        }
    }
}
