package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.OptionalInt;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.refusal.Refused;
import understudy.rig.OutputScale;

/** Through javax.sound into the virtual card, and back. */
@Tag("real-time")
class LoopbackTest {

    private static final OutputScale ONE_VOLT = new OutputScale(1, true);
    private static final int FRAMES = 48_000;
    private static final int FADE = 480;
    private static final PlayerSettings ONE_SECOND =
            PlayerSettings.DEFAULT.withTargetFill(LoopbackCard.BUSY_FILL).withDuration(Duration.ofSeconds(1));

    /**
     * The counter's 24-bit numbers pass 24 and 32 bits unchanged: outside the fades every bit comes back. In 16 bits
     * rounding and dither take 1.5 steps. More channels than two come back in order.
     */
    @ParameterizedTest
    @CsvSource({"PCM32, 2, 0", "PCM24, 2, 0", "PCM24_IN_4, 2, 0", "PCM16, 2, 1.5", "PCM32, 6, 0"})
    void everySampleComesBack(SampleFormat format, int channels, double steps) throws IOException, InterruptedException {
        try (LoopbackCard card = LoopbackCard.start(channels)) {
            var choice = new DeviceChoice(card.output(), 48000, channels, format, false, true);
            double[][] heard = card.hear(() -> Sources.counter(channels, 48000), ONE_VOLT, choice, ONE_SECOND);
            double[][] sent = new double[channels][FRAMES];
            Sources.counter(channels, 48000).render(sent, FRAMES);
            double tolerance = steps * 0x1p-15;
            // The fade begins at 0 and ends at 0: a few frames at either end may be lost in the cut.
            assertThat(heard[0].length).isBetween(FRAMES - 20, FRAMES);
            int shift = shift(sent[0], heard[0], tolerance);
            for (int c = 0; c < channels; c++) {
                for (int i = FADE; i < FRAMES - FADE; i++) {
                    if (Math.abs(heard[c][i - shift] - sent[c][i]) > tolerance) {
                        throw new AssertionError("channel " + c + " frame " + i + ": " + heard[c][i - shift] + " for " + sent[c][i]);
                    }
                }
            }
        }
    }

    private static int shift(double[] sent, double[] heard, double tolerance) {
        for (int shift = 0; shift < 20; shift++) {
            if (Math.abs(heard[FRAMES / 2 - shift] - sent[FRAMES / 2]) <= tolerance
                    && Math.abs(heard[FRAMES / 3 - shift] - sent[FRAMES / 3]) <= tolerance) {
                return shift;
            }
        }
        throw new AssertionError("what was sent is nowhere to be found");
    }

    @Test
    void oneSignalGoesToChannelOneAndTheOtherIsSilent() throws IOException, InterruptedException {
        try (LoopbackCard card = LoopbackCard.start()) {
            double[][] heard = card.hear(() -> Sources.constant(1, 48000, 0.5), ONE_VOLT, card.choice(1), ONE_SECOND);
            assertThat(heard).hasNumberOfRows(2);
            assertThat(heard[0][FRAMES / 2]).isEqualTo(0.5);
            assertThat(heard[1]).containsOnly(0);
        }
    }

    @Test
    void thePlayingThreadAllocatesNothingOnARealLine() throws IOException, InterruptedException {
        try (LoopbackCard card = LoopbackCard.start();
                Player player = Player.open(Sources.sine(1, 48000, 1000, 0.5), Sources.sine(1, 48000, 1000, 0.5), ONE_VOLT, card.choice(1), PlayerSettings.DEFAULT)) {
            assertThat(PlayerTest.bytesAllocatedWhilePlaying(player)).isZero();
        }
    }

    @Test
    void listsTheCardAndChoosesItsBestFormat() throws IOException, InterruptedException {
        try (LoopbackCard card = LoopbackCard.start()) {
            assertThat(Devices.outputs().get(0).name()).isEqualTo("default [default]");
            assertThat(Devices.outputs().get(0).isDefault()).isTrue();
            assertThat(Devices.output("DEFAULT").isSame(card.output())).isTrue();
            assertThat(Devices.input("default").direction()).isEqualTo(Device.Direction.INPUT);
            DeviceChoice best = Devices.choose(card.output(), 1, OptionalInt.empty());
            assertThat(best.format().bits()).isEqualTo(32);
            assertThat(best.rateHz()).isEqualTo(48000);
            assertThat(best.channels()).isEqualTo(2);
            assertThatThrownBy(() -> Devices.choose(card.output(), 200, OptionalInt.of(48000)))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("\"default [default]\" does not open with 200 channels at 48000 Hz");
        }
    }

    /** A second of 32-bit frames straight to a file, and a card that says nothing. */
    @Test
    void recordsToAFileAndNoticesSilence(@TempDir Path folder) throws IOException, InterruptedException {
        Path file = folder.resolve("heard.wav");
        try (LoopbackCard card = LoopbackCard.start(); Recorder recorder = Recorder.toFile(card.input(), 48000, 2, file)) {
            recorder.start();
            while (recorder.frames() < 49_000) {
                Thread.sleep(20);
            }
            assertThat(file).doesNotExist();
            Recorder.Recording recording = recorder.stop();
            assertThat(recording.onlyZeros()).isTrue();
            assertThat(recording.overruns()).isZero();
            try (WavReader reader = WavReader.open(file)) {
                assertThat(reader.frames()).isEqualTo(recording.frames());
                assertThat(reader.format()).isEqualTo(SampleFormat.PCM32);
            }
        }
        assertThat(Files.list(folder)).containsExactly(file);
    }

    @Test
    void aRecordingWhoseCardDiesFailsAndLeavesNoFile(@TempDir Path folder) throws IOException, InterruptedException {
        try (LoopbackCard card = LoopbackCard.start();
                Recorder recorder = Recorder.toFile(card.input(), 48000, 2, folder.resolve("heard.wav"))) {
            recorder.start();
            while (recorder.frames() < 9_000) {
                Thread.sleep(20);
            }
            card.kill();
            Thread.sleep(4000); // Three seconds of patience, and time for a busy machine.
            assertThatThrownBy(recorder::stop).isInstanceOf(Refused.class).hasMessageContaining("is lost");
        }
        assertThat(Files.list(folder)).isEmpty();
    }

    /**
     * New samples go behind those queued, and a step of the card (20 ms) passes in between: half of one at the
     * median.
     */
    @Test
    void aChangeGetsToTheCardWithinTheTargetFillAndTenMilliseconds() throws IOException, InterruptedException {
        try (LoopbackCard card = LoopbackCard.start()) {
            double[] millis = PlayBench.beyondTargetMillis(card, PlayerSettings.DEFAULT_TARGET_FILL, 31);
            assertThat(PlayBench.quantile(millis, 0.5)).isBetween(-PlayerSettings.DEFAULT_TARGET_FILL.toMillis() + 0.0, 10.0);
        }
    }
}
