package understudy.audio;

import understudy.rig.OutputScale;
import understudy.wave.VoltSource;

/**
 * Goes through the first seconds of a run against a clock of its own, so that all code is loaded and compiled before
 * it counts.
 */
final class WarmUp {

    private static final int SECONDS = 3;
    private static final long STEP_NANOS = 1_000_000;

    private WarmUp() {}

    static void run(VoltSource twin, OutputScale scale, Destination destination) {
        var clock = new Clock() {
            private long nowNanos;

            @Override
            public long nanos() {
                return nowNanos;
            }

            @Override
            public void pause(long nanos) {
                nowNanos += STEP_NANOS;
            }
        };
        OutputStage stage = Player.stageFor(twin, scale, destination);
        int rateHz = twin.rateHz();
        var line = new SilentLine(rateHz, stage.frameBytes(), rateHz / 5, clock);
        try {
            new LineWriter(twin, stage, line, clock, rateHz / 25, (long) SECONDS * rateHz).run();
        } catch (LineWriter.LineFailed e) {
            throw new IllegalStateException("a silent line never fails", e);
        }
    }
}
