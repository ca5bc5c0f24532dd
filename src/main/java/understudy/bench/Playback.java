package understudy.bench;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
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
import understudy.motion.Travel;
import understudy.pattern.Profile;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;
import understudy.wave.Hand;

/**
 * A plan that sounds, or goes into a file: the only door to a line. Nothing passes whose limits are broken, whose shape
 * is lost at the rate, or whose cautions nobody has agreed to. Any thread may call it.
 */
public final class Playback implements AutoCloseable {

    private static final long LOOK_MILLIS = 20;

    private final Player player;
    private final SignalRun run;
    private final AtomicReference<Hand> hand;
    private final int rateHz;

    private Playback(Player player, SignalRun run, AtomicReference<Hand> hand, int rateHz) {
        this.player = player;
        this.run = run;
        this.hand = hand;
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
        return new Playback(Player.open(run.source(), rehearsal.source(), run.scale(), to, settings), run, hand, atRate.rateHz());
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

    /**
     * Lets the speed go along these steps, frame by frame; returns when the last of them has been heard, or when it is over.
     *
     * @param way  ramps and sweeps; a start of NaN is wherever the speed is
     * @param toHz where it ends
     */
    public void travel(List<Profile.Step> way, double toHz) {
        boolean there = way.size() == 1 && way.get(0) instanceof Profile.Ramp ramp && Double.isNaN(ramp.fromHz()) && hand.get().speedHz() == toHz;
        if (!there) {
            Travel travel = new Travel(way);
            hand.set(hand.get().travelling(travel, toHz));
            dwell(travel.seconds());
        }
    }

    /** Returns when what the hand asks for now has been heard for {@code seconds}, or when it is over. */
    public void dwell(double seconds) {
        PlayerStatus now = player.status();
        double queued = now.queuedMillis() / 1e3 * rateHz;
        awaitFrame(now.framesPlayed() + Math.round(queued + seconds * rateHz) + Motion.WINDOW_FRAMES);
    }

    /** Returns when it has played for {@code seconds} from its start, or when it is over. */
    public void awaitPlayed(double seconds) {
        awaitFrame((long) Math.ceil(seconds * rateHz));
    }

    private void awaitFrame(long frame) {
        try {
            while (status().framesPlayed() < frame && !isOver()) {
                Thread.sleep(LOOK_MILLIS);
            }
        } catch (InterruptedException e) {
            throw interrupted(e);
        }
    }

    private static IllegalStateException interrupted(InterruptedException e) {
        Thread.currentThread().interrupt();
        return new IllegalStateException("nobody interrupts this thread", e);
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
            throw interrupted(e);
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
