package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import understudy.rig.OutputScale;
import understudy.wave.VoltSource;

/** The playing loop against a device and a clock of the test's own: a minute takes a moment. */
class LineWriterTest {

    private static final int RATE_HZ = 48000;
    private static final int TARGET = 1920;
    private static final int STEP = 960;
    private static final int CAPACITY = 9600;
    private static final int FADE = 480;
    private static final OutputScale ONE_VOLT = new OutputScale(1, true);

    private final FakeDevice device = new FakeDevice(RATE_HZ, 4, STEP, CAPACITY);

    private LineWriter writer(VoltSource source, long totalFrames) {
        var stage = new OutputStage(ONE_VOLT, 1, 1, SampleFormat.PCM32, false, RATE_HZ, false);
        return new LineWriter(source, stage, device, device, TARGET, totalFrames);
    }

    /** Frame n of the counter at the level that n and the way to the end allow; then zeros. */
    @Test
    void playsEveryFrameOnceFadedAtBothEndsAndThenSilence() throws LineWriter.LineFailed {
        int total = 20_000;
        LineWriter writer = writer(Sources.counter(1, RATE_HZ), total);
        writer.run();

        double[] played = played();
        double[][] want = new double[1][total];
        Sources.counter(1, RATE_HZ).render(want, total);
        for (int i = 0; i < total; i++) {
            int near = Math.min(i + 1, total - 1 - i);
            double level = (1 - Math.cos(Math.PI * Math.min(near, FADE) / FADE)) / 2;
            // Half a step of 32 bits, and double rounding.
            if (Math.abs(played[i] - level * want[0][i]) > 0x1p-31) {
                throw new AssertionError("frame " + i + ": " + played[i] + " for " + level * want[0][i]);
            }
        }
        for (int i = total; i < played.length; i++) {
            assertThat(played[i]).isZero();
        }
        assertThat(writer.playedFrames()).isEqualTo(total);
        assertThat(writer.gaps().count()).isZero();
        assertThat(device.dryCount).as("silence followed until it was stopped").isZero();
    }

    @Test
    void fillsTheLineToTheTargetBeforeItStartsAndNeverBeyond() throws LineWriter.LineFailed {
        writer(Sources.constant(1, RATE_HZ, 0.5), 60L * RATE_HZ).run();
        assertThat(device.givenBeforeStart).isEqualTo(TARGET);
        assertThat(device.mostQueuedFrames).isEqualTo(TARGET);
    }

    /** A stop fades from the next block on: what is queued by then, the fade, and nothing more of the signal. */
    @Test
    void aStopFadesOutWithinTheQueueAndAFade() throws LineWriter.LineFailed {
        LineWriter[] writer = new LineWriter[1];
        VoltSource stopping = Sources.of(1, RATE_HZ, (c, n) -> {
            if (n == 30_000) {
                writer[0].stop();
            }
            return 0.5;
        });
        writer[0] = writer(stopping, Long.MAX_VALUE);
        writer[0].run();
        double[] played = played();
        int last = played.length;
        while (played[last - 1] == 0) {
            last--;
        }
        assertThat(last).isBetween(30_001, 30_000 + TARGET + FADE);
        // No step is steeper than the fade's steepest, level * pi / (2 * 480), bar rounding.
        for (int i = 1; i < last; i++) {
            assertThat(Math.abs(played[i] - played[i - 1])).isLessThan(0.5 * Math.PI / (2 * FADE) + 1e-9);
        }
    }

    /** After a gap nothing of the signal is skipped, and it comes back from silence. */
    @Test
    void aGapIsCountedAndRampedAndSkipsNothing() throws LineWriter.LineFailed {
        VoltSource held = Sources.of(1, RATE_HZ, (c, n) -> {
            if (n == 30_000) {
                device.pass(200_000_000);
            }
            return 0.25 + n * 1e-6;
        });
        LineWriter writer = writer(held, 60_000);
        writer.run();
        assertThat(writer.gaps().count()).isEqualTo(1);
        Underrun gap = writer.gaps().underrun(0);
        assertThat(gap.cause()).isEqualTo(Underrun.Cause.WRITER_LATE);
        // 200 ms, less the 960 to 1920 frames queued when it was held, give or take a look.
        assertThat(gap.lengthMillis()).isBetween(158.0, 182.0);
        assertThat(writer.targetFrames()).as("one step more").isEqualTo(TARGET + STEP);

        double[] played = played();
        assertThat(played[29_000]).isEqualTo(0.25 + 29_000e-6, org.assertj.core.api.Assertions.within(0x1p-31));
        assertThat(played[40_000]).isEqualTo(0.25 + 40_000e-6, org.assertj.core.api.Assertions.within(0x1p-31));
        int dip = 29_000;
        for (int i = 29_000; i < 31_000; i++) {
            dip = played[i] < played[dip] ? i : dip;
        }
        assertThat(played[dip]).as("begins again from silence").isLessThan(1e-4);
        assertThat(dip).isBetween(30_000 - TARGET, 30_000);
    }

    /** Without the top-up such a device would wait for ever. */
    @Test
    void aServerThatWaitsForAFullBufferAfterAGapGetsOne() throws LineWriter.LineFailed {
        device.waitsUntilFull = true;
        VoltSource held = Sources.of(1, RATE_HZ, (c, n) -> {
            if (n == 30_000) {
                device.pass(200_000_000);
            }
            return 0.5;
        });
        LineWriter writer = writer(held, 96_000);
        writer.run();
        assertThat(writer.playedFrames()).isEqualTo(96_000);
        assertThat(writer.gaps().count()).isEqualTo(1);
        assertThat(writer.targetFrames()).isEqualTo(TARGET + STEP);
    }

    /** Half a second of tries, ten milliseconds apart. */
    @Test
    void aDeviceThatTakesNoMoreFailsWithinASecond() {
        long[] diedAt = new long[1];
        VoltSource source = Sources.of(1, RATE_HZ, (c, n) -> {
            if (n == 30_000) {
                device.dead = true;
                diedAt[0] = device.nowNanos;
            }
            return 0.5;
        });
        assertThatThrownBy(() -> writer(source, Long.MAX_VALUE).run())
                .isInstanceOf(LineWriter.LineFailed.class).hasMessage("it took no more samples");
        assertThat(device.nowNanos - diedAt[0]).isBetween(490_000_000L, 600_000_000L);
    }

    @Test
    void aSourceThatThrowsIsFollowedBySilence() throws LineWriter.LineFailed {
        var thrown = new IllegalStateException("broken");
        LineWriter writer = writer(Sources.of(1, RATE_HZ, (c, n) -> {
            if (n == 30_000) {
                throw thrown;
            }
            return 0.5;
        }), Long.MAX_VALUE);
        writer.run();
        assertThat(writer.fault()).isSameAs(thrown);
        assertSilentFrom(30_000);
    }

    @Test
    void aVoltThatIsNoNumberIsFollowedBySilence() throws LineWriter.LineFailed {
        LineWriter writer = writer(
                Sources.of(1, RATE_HZ, (c, n) -> n == 30_000 ? Double.NaN : 0.5), Long.MAX_VALUE);
        writer.run();
        assertSilentFrom(30_000);
    }

    private void assertSilentFrom(int frame) {
        double[] played = played();
        assertThat(played.length).isGreaterThan(frame + RATE_HZ / 10);
        for (int i = frame; i < played.length; i++) {
            assertThat(played[i]).isZero();
        }
    }

    /** Whatever the device's step and the target, as long as the target holds two steps there is no gap. */
    @Property(tries = 100)
    void neverRunsDryWhileTheTargetHoldsTwoSteps(
            @ForAll @IntRange(min = 1, max = 2000) int stepFrames, @ForAll @IntRange(max = 3000) int moreFrames)
            throws LineWriter.LineFailed {
        var other = new FakeDevice(RATE_HZ, 4, stepFrames, 3 * (2 * stepFrames + moreFrames + 96));
        var stage = new OutputStage(ONE_VOLT, 1, 1, SampleFormat.PCM32, false, RATE_HZ, false);
        // Two looks of a millisecond more: so late may the writer be.
        int target = 2 * stepFrames + moreFrames + 96;
        var writer = new LineWriter(Sources.constant(1, RATE_HZ, 0.5), stage, other, other, target, 3L * RATE_HZ);
        writer.run();
        assertThat(other.dryCount).isZero();
        assertThat(writer.gaps().count()).isZero();
        assertThat(writer.playedFrames()).isEqualTo(3L * RATE_HZ);
    }

    private double[] played() {
        ByteBuffer bytes = ByteBuffer.wrap(device.given.toByteArray()).order(ByteOrder.LITTLE_ENDIAN);
        double[] samples = new double[bytes.remaining() / 4];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = bytes.getInt() * 0x1p-31;
        }
        return samples;
    }
}
