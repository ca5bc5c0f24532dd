package understudy.calibrate;

import java.time.Duration;
import java.util.function.DoubleConsumer;
import understudy.refusal.Refused;
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
 * @param startedAtFrame frames that had been handed over when playing began
 * @param lateFrames     so many more may have been recorded by then: what the system hands over at once
 * @param underruns      gaps while playing
 * @param overruns       times that recorded samples may have been lost
 * @param hardware       what the output's hardware ran at, where the system tells; else empty
 * @param givenUp        it ended after the pulses, since what came back of them can't be used
 */
public record LoopbackRun(
        double[][] channels, long startedAtFrame, int lateFrames, int underruns, int overruns, String hardware, boolean givenUp) {

    /** Latency matters to nobody here, gaps do. */
    static final Duration FILL = Duration.ofMillis(300);
    /** What is still on the way when the player has ended. */
    private static final long AFTER_MILLIS = 700;
    private static final long LOOK_MILLIS = 50;
    /** How much later than played the pulses may come back: queues on both sides, and any usual latency. */
    private static final double PULSES_LATE_SECONDS = 1;

    /**
     * @param output  and its format; its rate is the program's
     * @param channel that plays, from 0
     * @param input   to record from, at the same rate
     * @param inputChannel that the cable is plugged into, from 0
     * @param progress is told the part that is done, 0 to 1
     * @return all of it; or the beginning, as soon as the pulses tell that the rest would be in vain
     * @throws Refused if a device doesn't open, or is lost on the way
     */
    public static LoopbackRun of(TestProgram program, DeviceChoice output, int channel, Device input, int inputChannel,
            DoubleConsumer progress) throws InterruptedException {
        double[] samples = program.samples();
        PlayerSettings settings = PlayerSettings.DEFAULT.withTargetFill(FILL)
                .withDuration(Duration.ofNanos(Math.round(1e9 * samples.length / program.rateHz())));
        try (Recorder recorder = open(input, program.rateHz(), inputChannel);
                Player player = Player.open(new SampleSource(samples, program.rateHz(), channel, false),
                        new SampleSource(samples, program.rateHz(), channel, false), OutputScale.PARTS,
                        output, settings)) {
            recorder.start();
            while (recorder.frames() == 0 && !recorder.ended()) {
                Thread.sleep(5);
            }
            long startedAt = recorder.frames();
            player.start();
            boolean listenedTo = false;
            while (player.awaitEnd(Duration.ofMillis(LOOK_MILLIS)).isEmpty()) {
                long played = player.status().framesPlayed();
                progress.accept(Math.min(1, (double) played / samples.length));
                if (!listenedTo && played >= program.sweepAt() + program.frames(PULSES_LATE_SECONDS)) {
                    listenedTo = true;
                    LoopbackRun begun = new LoopbackRun(recorder.soFar(), startedAt, 0, 0, 0, "", true);
                    if (!LoopbackCheck.of(program, begun, inputChannel).isEmpty()) {
                        return begun;
                    }
                }
            }
            PlayerReport report = player.awaitEnd();
            Thread.sleep(AFTER_MILLIS);
            Recorder.Recording recording = recorder.stop();
            if (report.end() instanceof PlayerEnd.Lost lost) {
                throw Refused.setup(lost.reason(), "");
            } else if (report.end() instanceof PlayerEnd.Fault fault) {
                throw new IllegalStateException("playing failed", fault.cause());
            }
            return new LoopbackRun(recording.samples(), startedAt, recording.mostAtOnceFrames(), report.underrunCount(), recording.overruns(),
                    report.hardware(), false);
        }
    }

    /** Both channels of a stereo plug, so that a wrong one can be told from silence; some inputs have but one. */
    private static Recorder open(Device input, int rateHz, int channel) {
        try {
            return Recorder.toMemory(input, rateHz, Math.max(2, channel + 1));
        } catch (Refused stereo) {
            if (channel > 0) {
                throw stereo;
            }
            return Recorder.toMemory(input, rateHz, 1);
        }
    }
}
