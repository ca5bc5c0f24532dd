package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import understudy.rig.OutputScale;
import understudy.wave.VoltSource;
import understudy.refusal.Refused;

class WavTest {

    private static final OutputScale ONE_VOLT = new OutputScale(1, true);

    @TempDir
    Path folder;

    /** Every byte worked out by hand from the RIFF and WAVE definitions. */
    @Test
    void aSixteenBitFileIsPlainPcmByteForByte() throws IOException {
        Path file = folder.resolve("a.wav");
        try (WavWriter writer = WavWriter.create(file, 2, 48000, SampleFormat.PCM16)) {
            writer.write(new byte[] {1, 2, 3, 4}, 4);
            writer.commit();
        }
        assertThat(hex(file)).isEqualTo(""
                + "52494646" + "4c000000" + "57415645" // RIFF, 84 - 8 bytes, WAVE
                + "4a554e4b" + "1c000000" + "00".repeat(28) // JUNK, room for ds64
                + "666d7420" + "10000000" + "0100" + "0200" // fmt, 16 bytes, PCM, 2 channels
                + "80bb0000" + "00ee0200" + "0400" + "1000" // 48000 Hz, 192000 bytes/s, 4 bytes a frame, 16 bits
                + "64617461" + "04000000" + "01020304"); // data
    }

    /** An odd number of bytes is followed by a pad byte that the RIFF size counts and the data size does not. */
    @Test
    void aTwentyFourBitFileIsExtensibleAndPadded() throws IOException {
        Path file = folder.resolve("a.wav");
        try (WavWriter writer = WavWriter.create(file, 1, 44100, SampleFormat.PCM24)) {
            writer.write(new byte[] {1, 2, 3}, 3);
            writer.commit();
        }
        assertThat(hex(file)).isEqualTo(""
                + "52494646" + "64000000" + "57415645" // 108 bytes in all, less 8
                + "4a554e4b" + "1c000000" + "00".repeat(28)
                + "666d7420" + "28000000" + "feff" + "0100" + "44ac0000" + "cc040200" + "0300" + "1800"
                + "1600" + "1800" + "04000000" + "0100000000001000800000aa00389b71" // 22 more: 24 valid bits, centre, PCM
                + "64617461" + "03000000" + "010203" + "00");
    }

    /** Over the limit the same bytes become RF64: sizes in ds64, all ones where they stood; no sample moves. */
    @Test
    void aLargeFileIsRf64() throws IOException {
        Path file = folder.resolve("a.wav");
        try (WavWriter writer = WavWriter.create(file, 3, 8000, SampleFormat.FLOAT32, 100)) {
            writer.write(new byte[12], 12);
            writer.commit();
        }
        assertThat(hex(file)).isEqualTo(""
                + "52463634" + "ffffffff" + "57415645" // RF64
                + "64733634" + "1c000000" // ds64: RIFF 128 - 8, data 12, frames 1, no table
                + "7800000000000000" + "0c00000000000000" + "0100000000000000" + "00000000"
                + "666d7420" + "28000000" + "feff" + "0300" + "401f0000" + "00770100" + "0c00" + "2000"
                + "1600" + "2000" + "00000000" + "0300000000001000800000aa00389b71" // no places in a room, float
                + "66616374" + "04000000" + "ffffffff" // fact: see ds64
                + "64617461" + "ffffffff" + "00".repeat(12));
    }

    @Test
    void theLastRiffFileIsOneByteUnderTheLimit() {
        var header = new WavHeader(1, 48000, SampleFormat.PCM16);
        // 12 + 36 + 24 + 8 bytes of header, of which 8 are not counted.
        long most = 0xFFFFFFFFL - 72;
        assertThat(header.bytes(most - 1, WavHeader.RIFF_LIMIT_BYTES).getInt(0)).isEqualTo(0x46464952);
        assertThat(header.bytes(most + 1, WavHeader.RIFF_LIMIT_BYTES).getInt(0)).isEqualTo(0x34364652);
    }

    @Property(tries = 40)
    void whatWasWrittenIsRead(
            @ForAll SampleFormat format, @ForAll @IntRange(min = 1, max = 9) int channels,
            @ForAll @IntRange(max = 9000) int frames, @ForAll boolean large) throws IOException {
        Assume.that(format != SampleFormat.PCM24_IN_4); // Lines only; see refusesWhatIsNoFileFormat.
        Path file = Files.createTempFile("wav", ".wav");
        try (WavWriter writer = WavWriter.create(file, channels, 96000, format, large ? 0 : 0xFFFFFFFFL)) {
            byte[] bytes = new byte[frames * channels * format.bytes()];
            var stage = new OutputStage(ONE_VOLT, channels, channels, format, false, 96000, true);
            double[][] volts = new double[channels][frames];
            Sources.counter(channels, 96000).render(volts, frames);
            stage.pack(volts, frames, bytes);
            writer.write(bytes, bytes.length);
            writer.commit();

            try (WavReader reader = WavReader.open(file)) {
                assertThat(List.of(reader.channels(), reader.rateHz(), reader.format(), reader.frames()))
                        .isEqualTo(List.of(channels, 96000, format, (long) frames));
                double[][] back = new double[channels][frames + 1];
                assertThat(reader.read(back, frames + 1)).isEqualTo(frames);
                assertThat(reader.read(back, 1)).isZero();
                // The counter is a 24-bit number: exact in all but 16 bits, where dither and rounding take 1.5 steps.
                double tolerance = format == SampleFormat.PCM16 ? 1.5 * 0x1p-15 : 0;
                for (int c = 0; c < channels; c++) {
                    for (int i = 0; i < frames; i++) {
                        if (Math.abs(back[c][i] - volts[c][i]) > tolerance) {
                            throw new AssertionError("channel " + c + " frame " + i + ": " + back[c][i] + " for " + volts[c][i]);
                        }
                    }
                }
            }
        } finally {
            Files.delete(file);
        }
    }

    @ParameterizedTest
    @EnumSource(value = SampleFormat.class, names = "PCM24_IN_4", mode = EnumSource.Mode.EXCLUDE)
    void rendersAKnownSignal(SampleFormat format) throws IOException {
        Path file = folder.resolve("sine.wav");
        List<Long> progress = new ArrayList<>();
        var summary = WavRender.write(
                Sources.sine(2, 48000, 1000, 0.5), ONE_VOLT, 3, format, 40_000, file, progress::add);
        assertThat(summary.frames()).isEqualTo(40_000);
        assertThat(summary.clippedSamples()).isZero();
        assertThat(progress).containsExactly(16_384L, 32_768L, 40_000L);
        // Half a step for rounding (a float's step at 0.5 is 2^-24), one step more for 16-bit dither.
        double tolerance = format == SampleFormat.PCM16 ? 1.5 * 0x1p-15 : format == SampleFormat.PCM24 ? 0x1p-24 : 0x1p-25;
        try (WavReader reader = WavReader.open(file)) {
            double[][] back = new double[3][40_000];
            reader.read(back, 40_000);
            for (int i = 0; i < 40_000; i++) {
                double want = 0.5 * Math.sin(2 * Math.PI * (i % 48) / 48);
                assertThat(Math.abs(back[0][i] - want)).isLessThanOrEqualTo(tolerance + 1e-12);
                assertThat(back[1][i]).isBetween(want - 2 * tolerance - 1e-12, want + 2 * tolerance + 1e-12);
                assertThat(back[2][i]).isZero();
            }
        }
    }

    @Test
    void aSourceThatFailsLeavesTheOldFileAndNothingElse() throws IOException {
        Path file = folder.resolve("kept.wav");
        Files.writeString(file, "old");
        VoltSource failing = Sources.of(1, 48000, (c, n) -> {
            if (n == 9000) {
                throw new IllegalStateException("no more");
            }
            return 0;
        });
        assertThatThrownBy(() -> WavRender.write(failing, ONE_VOLT, 1, SampleFormat.PCM16, 20_000, file, f -> {}))
                .hasMessage("no more");
        VoltSource notANumber = Sources.of(1, 48000, (c, n) -> n == 9000 ? Double.NaN : 0);
        assertThatThrownBy(() -> WavRender.write(notANumber, ONE_VOLT, 1, SampleFormat.PCM16, 20_000, file, f -> {}))
                .hasMessageContaining("not a number at frame 9000");
        assertThat(Files.readString(file)).isEqualTo("old");
        assertOnly("kept.wav");
    }

    @Test
    void theTargetIsNotThereUntilItIsComplete() throws IOException {
        Path file = folder.resolve("late.wav");
        WavRender.write(Sources.constant(1, 48000, 0), ONE_VOLT, 1, SampleFormat.PCM16, 20_000, file,
                done -> assertThat(file).doesNotExist());
        assertThat(file).exists();
        assertOnly("late.wav");
    }

    @Test
    void aLinkIsFollowedAndKept() throws IOException {
        Path real = Files.createFile(folder.resolve("real.wav"));
        Path link = Files.createSymbolicLink(folder.resolve("link.wav"), real);
        WavRender.write(Sources.constant(1, 48000, 0), ONE_VOLT, 1, SampleFormat.PCM16, 10, link, f -> {});
        assertThat(link).isSymbolicLink();
        assertThat(Files.size(real)).isEqualTo(80 + 20);
    }

    @Test
    void refusesPlacesWhereNoFileCanBe() {
        assertRefused(folder, "is a folder; give the name of a file in it");
        assertRefused(folder.resolve("no/such/a.wav"), "there is no folder " + folder.resolve("no/such") + "; make it first");
        assertRefused(Path.of("/dev/null"), "is not an ordinary file; give the name of a file");
        assertOnly();
    }

    @Test
    void refusesAtOnceWhatTheDiskCannotHold() {
        long frames = 1L << 60;
        assertThatThrownBy(() -> WavRender.write(Sources.constant(1, 48000, 0), ONE_VOLT, 1, SampleFormat.PCM16, frames,
                        folder.resolve("huge.wav"), f -> {}))
                .isInstanceOf(Refused.class)
                .hasMessageMatching("(?s).*huge.wav: this needs 2305843009213.7 MB and the disk has [0-9.]+ MB free; make room.*");
        assertOnly();
    }

    @Test
    void refusesWhatIsNoFileFormat() {
        assertThatThrownBy(() -> WavWriter.create(folder.resolve("a.wav"), 1, 48000, SampleFormat.PCM24_IN_4))
                .hasMessage("24 bits in 4 bytes is for lines; a file has PCM24");
    }

    private void assertRefused(Path target, String message) {
        assertThatThrownBy(() -> WavWriter.create(target, 1, 48000, SampleFormat.PCM16))
                .isInstanceOf(Refused.class)
                .hasMessage(target + ": " + message);
    }

    private void assertOnly(String... names) {
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(f -> f.getFileName().toString())).containsExactlyInAnyOrder(names);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static String hex(Path file) throws IOException {
        return HexFormat.of().formatHex(Files.readAllBytes(file));
    }
}
