package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A device that takes 20 ms at a time, looked at about every millisecond; each test is one story with a known end. */
class GapWatchTest {

    private static final int RATE_HZ = 48000;
    private static final int STEP = 960;
    private static final long MS = 1_000_000;

    private final GapWatch watch = new GapWatch(RATE_HZ);
    private final Random random = new Random(1);
    private long now = 77_000 * MS;
    private double deviceRate = 1;
    private double deviceFrames;
    private long taken;
    private long collectorMillis;

    @BeforeEach
    void begin() {
        watch.begin(now, 0);
        play(1000);
        assertThat(watch.count()).isZero();
    }

    /** Looks come 1.0 to 1.5 ms apart; the queue is refilled at once. */
    private void play(long millis) {
        for (long end = now + millis * MS; now < end; ) {
            pass(MS + random.nextInt((int) (MS / 2)));
            look(1920 - (int) (deviceFrames - taken));
        }
    }

    private void pass(long nanos) {
        now += nanos;
        deviceFrames += nanos * 1e-9 * RATE_HZ * deviceRate;
        taken = (long) deviceFrames / STEP * STEP;
    }

    private void look(int queued) {
        watch.observe(now, taken, queued, collectorMillis);
    }

    @Test
    void seesNoGapWhereThereIsNone() {
        play(3_600_000);
        assertThat(watch.count()).isZero();
        assertThat(watch.stepFrames()).isEqualTo(STEP);
    }

    /** 300 millionths is the worst of cheap crystals: over an hour the lag moves by a second. */
    @ParameterizedTest
    @ValueSource(doubles = {1.0003, 0.9997})
    void aDeviceWithAClockOfItsOwnIsNoGap(double rate) {
        deviceRate = rate;
        play(3_600_000);
        assertThat(watch.count()).isZero();
    }

    @Test
    void beingLateWithoutRunningDryIsNoGap() {
        for (int i = 0; i < 100; i++) {
            pass(18 * MS);
            look(960);
            play(50);
        }
        assertThat(watch.count()).isZero();
    }

    /** The device stands still for want of samples: lag steps up by as much, less than a look of doubt. */
    @ParameterizedTest
    @ValueSource(longs = {5, 12, 30, 400})
    void aGapOfOurMakingIsMeasured(long millis) {
        now += millis * MS;
        look(0);
        play(1000);
        assertThat(watch.count()).isEqualTo(1);
        assertThat(watch.underrun(0).lengthMillis()).isBetween(millis - 1.5, millis + 1.5);
        assertThat(watch.lastWasStarved()).isTrue();
    }

    @Test
    void blamesTheWriterOrTheCollector() {
        now += 60 * MS;
        look(0);
        play(1000);
        collectorMillis += 55;
        now += 60 * MS;
        look(0);
        play(1000);
        assertThat(watch.underrun(0).cause()).isEqualTo(Underrun.Cause.WRITER_LATE);
        assertThat(watch.underrun(1).cause()).isEqualTo(Underrun.Cause.COLLECTOR);
    }

    /** The queue stays full: the device stood still by itself. */
    @Test
    void aStallIsTheDevicesOwn() {
        for (int i = 0; i < 1500; i++) {
            now += MS;
            look(1920);
        }
        play(1000);
        assertThat(watch.count()).isEqualTo(1);
        assertThat(watch.underrun(0).cause()).isEqualTo(Underrun.Cause.SINK_STALLED);
        assertThat(watch.underrun(0).lengthMillis()).isBetween(1498.5, 1501.5);
        assertThat(watch.lastWasStarved()).isFalse();
    }

    /** When another program comes or goes, a server changes by up to 50 ms how far ahead it takes. */
    @Test
    void aServerThatChangesItsMindAboutItsBufferIsNoGap() {
        for (int i = 0; i < 50; i++) {
            now += MS;
            look(1920);
        }
        play(1000);
        deviceFrames += 2400;
        taken = (long) deviceFrames / STEP * STEP;
        look(960);
        play(1000);
        assertThat(watch.count()).isZero();
    }

    @Test
    void keepsCountingBeyondWhatItKeeps() {
        for (int i = 0; i < GapWatch.KEPT + 10; i++) {
            now += 50 * MS;
            look(0);
            play(200);
        }
        assertThat(watch.count()).isEqualTo(GapWatch.KEPT + 10);
        assertThat(watch.longestMillis()).isBetween(48.0, 52.0);
    }
}
