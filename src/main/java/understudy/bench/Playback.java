package understudy.bench;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.LongConsumer;
import understudy.audio.Destination;
import understudy.audio.DeviceChoice;
import understudy.audio.Player;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.PlayerSettings;
import understudy.audio.PlayerStatus;
import understudy.audio.SampleFormat;
import understudy.audio.WavRender;
import understudy.motion.Motion;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;
import understudy.wave.Hand;

/**
 * A plan that sounds, or goes into a file: the only door to a line. Nothing passes whose limits are broken, whose shape
 * is lost at the rate, or whose cautions nobody has agreed to. Any thread may call it.
 */
public final class Playback implements AutoCloseable {

    private final Player player;
    private final SignalRun run;
    private final int rateHz;

    private Playback(Player player, SignalRun run, int rateHz) {
        this.player = player;
        this.run = run;
        this.rateHz = rateHz;
    }

    /**
     * Opens the destination, ready to {@link #start}; takes a moment, in which it warms up.
     *
     * @param hand      what the user's hand asks for while it plays
     * @param clearance of this very occasion
     * @throws understudy.refusal.Refused for a plan that may not be played, or when the device does not open
     */
    public static Playback open(
            SignalPlan plan, AtomicReference<Hand> hand, Destination to, PlayerSettings settings, Clearance clearance) {
        SignalPlan atRate = plan.atRate(to.rateHz());
        check(atRate);
        if (!clearance.covers(atRate, to instanceof DeviceChoice)) {
            throw new IllegalStateException("nobody has agreed to the cautions of " + plan.pattern().id() + " there");
        }
        SignalRun run = atRate.run(hand);
        SignalRun rehearsal = atRate.run(hand);
        return new Playback(Player.open(run.source(), rehearsal.source(), run.scale(), to, settings), run, atRate.rateHz());
    }

    /** Writes a plan from its start into a file, faster than real time; gives what was written and what fell short. */
    public static Rendering render(SignalPlan plan, SampleFormat format, long frames, Path target, LongConsumer progress) {
        check(plan);
        SignalRun run = plan.run(plan.hand());
        WavRender.Summary summary =
                WavRender.write(run.source(), run.scale(), plan.channels().channels(), format, frames, target, progress);
        return new Rendering(summary, run.shortage());
    }

    /**
     * What came of rendering.
     *
     * @param shortage what full scale did not allow, if anything
     */
    public record Rendering(WavRender.Summary summary, Optional<Remedy> shortage) {}

    private static void check(SignalPlan plan) {
        Refusals problems = new Refusals();
        plan.check(problems);
        plan.checkRate(problems);
        problems.refuse();
    }

    /** Begins to play, faded in. Once only. */
    public void start() {
        player.start();
    }

    /** Fades out and ends; returns at once. */
    public void stop() {
        player.stop();
    }

    /** Turns per second that are computed at this moment, a latency before they are played. */
    public double speedHz() {
        return run.speedHz();
    }

    /** Frames of signal, counted from the start, after which what the hand asks for now has been heard for {@code seconds}. */
    public long framesUntil(double seconds) {
        PlayerStatus now = player.status();
        double queued = now.queuedMillis() / 1e3 * rateHz;
        return now.framesPlayed() + Math.round(queued + seconds * rateHz) + Motion.WINDOW_FRAMES;
    }

    public PlayerStatus status() {
        return player.status();
    }

    /** Whether it plays no more. */
    public boolean isOver() {
        return player.status().state() == PlayerStatus.State.ENDED;
    }

    /** Waits until it has ended, for so long at most; empty when it still plays. */
    public Optional<PlayerReport> awaitEnd(Duration longest) throws InterruptedException {
        return player.awaitEnd(longest).map(Playback::withoutFault);
    }

    /** Stops, waits, and gives the report. */
    public PlayerReport end() {
        player.stop();
        try {
            return withoutFault(player.awaitEnd());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("nobody interrupts this thread", e);
        }
    }

    private static PlayerReport withoutFault(PlayerReport report) {
        if (report.end() instanceof PlayerEnd.Fault fault) {
            throw new IllegalStateException("playing failed", fault.cause());
        }
        return report;
    }

    /** After the end: what full scale did not allow, if anything. */
    public Optional<Remedy> shortage() {
        return run.shortage();
    }

    /** Stops and waits; the line is closed or given up when this returns. */
    @Override
    public void close() {
        player.close();
    }
}
