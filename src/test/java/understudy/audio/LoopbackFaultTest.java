package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import understudy.rig.OutputScale;
import understudy.wave.VoltSource;

/** What happens to a device while it plays, through real lines. Each test breaks a card of its own. */
@Tag("real-time")
class LoopbackFaultTest {

    private static final OutputScale ONE_VOLT = new OutputScale(1, true);
    /** Three seconds until the watchdog gives up, two for the closer, one for a busy machine. */
    private static final Duration BOUND = Duration.ofSeconds(6);

    private LoopbackCard card;
    private Player player;

    @BeforeEach
    void startPlaying() throws IOException, InterruptedException {
        card = LoopbackCard.start();
    }

    @AfterEach
    void stopPlaying() throws IOException {
        if (player != null) {
            player.close();
        }
        card.close();
    }

    private void play(VoltSource source) throws InterruptedException {
        player = Player.open(source, source, ONE_VOLT, card.choice(1), PlayerSettings.DEFAULT);
        player.start();
        await(() -> player.status().secondsPlayed() > 0.5);
    }

    private static VoltSource tone() {
        return Sources.sine(1, 48000, 1000, 0.5);
    }

    @Test
    void aKilledServerIsALoss() throws IOException, InterruptedException {
        play(tone());
        card.kill();
        assertLost();
    }

    @Test
    void aVanishedSinkIsALoss() throws IOException, InterruptedException {
        play(tone());
        card.unloadSink("bench");
        assertLost();
    }

    /** The server then moves the stream without a word, and the signal would come out of the wrong socket. */
    @Test
    void aSinkThatVanishesBesideAnotherIsALoss() throws IOException, InterruptedException {
        play(tone());
        card.addSink("other");
        Thread.sleep(1500); // The route is looked at once a second.
        card.unloadSink("bench");
        assertLost("moved the signal to another output");
    }

    /** A frozen server never lets the line close: it has to be given up. */
    @Test
    void aFrozenServerIsALossAndDoesNotHang() throws IOException, InterruptedException {
        play(tone());
        card.freeze();
        assertLost();
        card.thaw();
    }

    @Test
    void aSinkSuspendedForGoodIsALoss() throws IOException, InterruptedException {
        play(tone());
        card.suspend(true);
        await(() -> player.status().state() == PlayerStatus.State.STALLED);
        assertLost();
    }

    /** Nothing of the signal is lost, but the device stood still: that is a gap, and not one of our making. */
    @Test
    void aSinkSuspendedForAWhileIsAStallThatPlaysOn() throws IOException, InterruptedException {
        play(tone());
        card.suspend(true);
        Thread.sleep(1500);
        assertThat(player.status().state()).isEqualTo(PlayerStatus.State.STALLED);
        card.suspend(false);
        double before = player.status().secondsPlayed();
        await(() -> player.status().secondsPlayed() > before + 0.5);
        assertThat(player.status().state()).isEqualTo(PlayerStatus.State.PLAYING);
        player.stop();
        PlayerReport report = player.awaitEnd();
        assertThat(report.end()).isInstanceOf(PlayerEnd.Stopped.class);
        assertThat(report.stalls()).isEqualTo(1);
        assertThat(report.underruns()).hasSize(1);
        Underrun gap = report.underruns().get(0);
        assertThat(gap.cause()).isEqualTo(Underrun.Cause.SINK_STALLED);
        // 1.5 s asked for; the two commands take their time, and the server may be 50 ms ahead.
        assertThat(gap.lengthMillis()).isBetween(1440.0, 2500.0);
        assertThat(report.targetEndMillis()).as("a longer queue would not have helped").isEqualTo(report.targetStartMillis());
    }

    /** The writer is held for 400 ms with at most 80 ms queued: at least 320 ms are missing, less a look of doubt. */
    @Test
    void aWriterThatComesTooLateIsSeenAsOneUnderrun() throws IOException, InterruptedException {
        VoltSource late = Sources.of(1, 48000, new Sources.Formula() {
            private boolean held;

            @Override
            public double volts(int channel, long frame) {
                // The rehearsal of three seconds goes through the same source, so that this is a second into the run.
                if (frame > 4 * 48000 && !held) {
                    held = true;
                    LockSupport.parkNanos(400_000_000);
                }
                return 0.5;
            }
        });
        play(late);
        await(() -> player.status().secondsPlayed() > 2);
        player.stop();
        PlayerReport report = player.awaitEnd();
        assertThat(report.underruns()).hasSize(1);
        assertThat(report.underruns().get(0).cause()).isEqualTo(Underrun.Cause.WRITER_LATE);
        assertThat(report.underruns().get(0).lengthMillis()).isBetween(300.0, 500.0);
        assertThat(report.targetEndMillis()).as("raised by one step of the device").isGreaterThan(report.targetStartMillis() + 5);
    }

    /** Each block takes 1.2 times as long as it plays: no queue can hide that. */
    @Test
    void aSourceThatIsTooSlowIsSeenAsUnderruns() throws IOException, InterruptedException {
        VoltSource tone = tone();
        VoltSource slow = new VoltSource() {
            private long framesRendered;

            @Override
            public int channels() {
                return 1;
            }

            @Override
            public int rateHz() {
                return 48000;
            }

            @Override
            public void render(double[][] volts, int frames) {
                tone.render(volts, frames);
                framesRendered += frames;
                if (framesRendered > 4 * 48000) {
                    LockSupport.parkNanos(frames * 25_000L);
                }
            }
        };
        play(slow);
        await(() -> player.status().secondsPlayed() > 4);
        player.stop();
        PlayerReport report = player.awaitEnd();
        assertThat(report.underrunCount()).isGreaterThan(3);
        assertThat(report.end()).isInstanceOf(PlayerEnd.Stopped.class);
    }

    private void assertLost() throws InterruptedException {
        assertLost("it took no");
    }

    private void assertLost(String seen) throws InterruptedException {
        Optional<PlayerReport> report = player.awaitEnd(BOUND);
        assertThat(report).as("ends within %s", BOUND).isPresent();
        assertThat(report.get().end()).isInstanceOf(PlayerEnd.Lost.class);
        assertThat(((PlayerEnd.Lost) report.get().end()).reason())
                .startsWith("audio output \"default [default]\" is lost: ")
                .contains(seen)
                .endsWith("check the plug, then start again");
    }

    private void await(BooleanSupplier condition) throws InterruptedException {
        long end = System.nanoTime() + BOUND.toNanos();
        while (!condition.getAsBoolean()) {
            assertThat(System.nanoTime()).as("within %s: %s", BOUND, player.status()).isLessThan(end);
            Thread.sleep(10);
        }
    }
}
