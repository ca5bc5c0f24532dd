package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import understudy.rig.OutputScale;
import understudy.wave.VoltSource;

/** The player's threads and its ends, without a sound card. */
@Tag("real-time")
class PlayerTest {

    private static final OutputScale ONE_VOLT = new OutputScale(1, true);
    private static final Silent SILENT = new Silent(48000, 2);

    private static VoltSource tone() {
        return Sources.sine(1, 48000, 1000, 0.5);
    }

    private static Player open(PlayerSettings settings) {
        return Player.open(tone(), tone(), ONE_VOLT, SILENT, settings);
    }

    /** Real time cannot be shorter than the signal. How much longer depends on how busy the machine is. */
    @Test
    void aRehearsalTakesItsTimeAndPlaysItAll() throws InterruptedException {
        try (Player player = open(PlayerSettings.DEFAULT.withDuration(Duration.ofMillis(500)))) {
            assertThat(player.status().state()).isEqualTo(PlayerStatus.State.READY);
            long start = System.nanoTime();
            player.start();
            PlayerReport report = player.awaitEnd();
            assertThat(System.nanoTime() - start).isGreaterThan(500_000_000L);
            assertThat(report.end()).isInstanceOf(PlayerEnd.Finished.class);
            assertThat(report.framesPlayed()).isEqualTo(24_000);
            assertThat(report.secondsPlayed()).isEqualTo(0.5);
            // The sine's top falls on a sample: 12 frames of 48 into each turn.
            assertThat(report.peakOfFullScale()).isEqualTo(0.5);
            assertThat(report.leftOpen()).isFalse();
            assertThat(player.status().state()).isEqualTo(PlayerStatus.State.ENDED);
        }
    }

    @Test
    void aStopEndsItSoon() throws InterruptedException {
        try (Player player = open(PlayerSettings.DEFAULT)) {
            player.start();
            assertThat(player.awaitEnd(Duration.ofMillis(300))).isEmpty();
            player.stop();
            assertThat(player.awaitEnd(Duration.ofSeconds(5)).orElseThrow().end()).isInstanceOf(PlayerEnd.Stopped.class);
        }
    }

    @Test
    void whatNeverStartedCanBeClosed() throws InterruptedException {
        Player player = open(PlayerSettings.DEFAULT);
        player.close();
        assertThat(player.awaitEnd().end()).isInstanceOf(PlayerEnd.Stopped.class);
        assertThatThrownBy(player::start).isInstanceOf(IllegalStateException.class);
    }

    @Test
    void aFailingSourceIsAFaultThatKeepsItsReason() throws InterruptedException {
        assertFault(Sources.of(1, 48000, (c, n) -> {
            if (n > 9000) {
                throw new IllegalStateException("broken");
            }
            return 0;
        }), "broken");
        assertFault(Sources.of(1, 48000, (c, n) -> n == 9000 ? Double.POSITIVE_INFINITY : 0),
                "the signal is not a number at frame 9000");
    }

    private static void assertFault(VoltSource source, String message) throws InterruptedException {
        var line = new SilentLine(48000, 6, 9600, Clock.SYSTEM);
        try (var player = new Player(source, ONE_VOLT, SILENT, line, PlayerSettings.DEFAULT)) {
            player.start();
            PlayerEnd end = player.awaitEnd(Duration.ofSeconds(5)).orElseThrow().end();
            assertThat(end).isInstanceOf(PlayerEnd.Fault.class);
            assertThat(((PlayerEnd.Fault) end).cause()).hasMessage(message);
        }
    }

    /**
     * A device that never returns from anything: the watchdog's three seconds, the closer's two, and one for a busy
     * machine.
     */
    @Test
    void aDeviceThatHangsInEveryCallIsGivenUp() throws InterruptedException {
        var line = new SilentLine(48000, 6, 9600, Clock.SYSTEM) {
            private int writes;

            @Override
            public int write(byte[] bytes, int offset, int length) {
                return ++writes < 5 ? super.write(bytes, offset, length) : hang();
            }

            @Override
            public synchronized void flush() {
                hang();
            }
        };
        var player = new Player(tone(), ONE_VOLT, SILENT, line, PlayerSettings.DEFAULT);
        player.start();
        Optional<PlayerReport> report = player.awaitEnd(Duration.ofSeconds(6));
        assertThat(report).isPresent();
        assertThat(report.get().end()).isEqualTo(new PlayerEnd.Lost("the silent line is lost: it took no samples for 3 s; "
                + "it was unplugged, or the sound system stopped: check the plug, then start again"));
        assertThat(report.get().leftOpen()).isTrue();
        assertThat(report.get().stalls()).isEqualTo(1);
    }

    @Test
    void aSourceThatHangsIsAFault() throws InterruptedException {
        var line = new SilentLine(48000, 6, 9600, Clock.SYSTEM);
        var player = new Player(Sources.of(1, 48000, (c, n) -> n < 9000 ? 0 : hang()), ONE_VOLT, SILENT, line,
                PlayerSettings.DEFAULT);
        player.start();
        PlayerEnd end = player.awaitEnd(Duration.ofSeconds(6)).orElseThrow().end();
        assertThat(((PlayerEnd.Fault) end).cause()).hasMessage("the signal took more than 3 s to compute");
    }

    private static int hang() {
        while (true) {
            LockSupport.parkNanos(1_000_000_000);
        }
    }

    @Test
    void thePlayingThreadAllocatesNothing() throws InterruptedException {
        try (Player player = open(PlayerSettings.DEFAULT)) {
            assertThat(bytesAllocatedWhilePlaying(player)).isZero();
        }
    }

    /**
     * Starts it, and gives the least that its writer allocates in one of several half seconds: what a block allocates shows in each
     * of them, but when a machine is so busy that code is compiled late, the change-over makes objects once that compiled code
     * does without.
     */
    static long bytesAllocatedWhilePlaying(Player player) throws InterruptedException {
        var threads = (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
        player.start();
        Thread.sleep(500);
        long id = Thread.getAllStackTraces().keySet().stream()
                .filter(thread -> thread.getName().equals("audio-writer")).mapToLong(Thread::getId).max().orElseThrow();
        long least = Long.MAX_VALUE;
        for (int window = 0; window < 6 && least > 0; window++) {
            long before = threads.getThreadAllocatedBytes(id);
            awaitPlayed(player, 24_000);
            least = Math.min(least, threads.getThreadAllocatedBytes(id) - before);
        }
        return least;
    }

    private static void awaitPlayed(Player player, int frames) throws InterruptedException {
        long end = player.status().framesPlayed() + frames;
        while (player.status().framesPlayed() < end) {
            assertThat(player.status().state()).as("it plays").isEqualTo(PlayerStatus.State.PLAYING);
            Thread.sleep(20);
        }
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> PlayerSettings.DEFAULT.withTargetFill(Duration.ofMillis(4)))
                .hasMessage("the latency must be 5 ms to 1000 ms, got 4 ms");
        assertThatThrownBy(() -> PlayerSettings.DEFAULT.withDuration(Duration.ZERO))
                .hasMessage("the time to play must be above 0 s, got 0.0 s");
        assertThatThrownBy(() -> Player.open(tone(), tone(), ONE_VOLT, new Silent(44100, 1), PlayerSettings.DEFAULT))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
