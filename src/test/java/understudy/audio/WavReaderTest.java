package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.rig.OutputScale;
import understudy.refusal.Refused;

class WavReaderTest {

    @TempDir
    Path folder;

    /** A file of 5 GiB of nothing on a sparse disk, with one sample near its end: sizes and places beyond 32 bits. */
    @Test
    void readsBeyondFourGigabytes() throws IOException {
        Path file = folder.resolve("large.wav");
        long dataBytes = 5L << 30;
        var header = new WavHeader(1, 48000, SampleFormat.PCM16).bytes(dataBytes, WavHeader.RIFF_LIMIT_BYTES);
        try (var raw = new java.io.RandomAccessFile(file.toFile(), "rw")) {
            raw.write(header.array());
            raw.setLength(header.limit() + dataBytes);
            raw.seek(header.limit() + dataBytes - 4);
            raw.write(new byte[] {0, 0x40});
        }
        try (WavReader reader = WavReader.open(file)) {
            assertThat(reader.frames()).isEqualTo(dataBytes / 2);
            reader.seek(dataBytes / 2 - 3);
            double[][] end = new double[1][5];
            assertThat(reader.read(end, 5)).isEqualTo(3);
            assertThat(end[0]).containsExactly(0, 0.5, 0, 0, 0);
        }
    }

    /**
     * Each broken file begins from the good one, 16-bit stereo: format at byte 56, data size at 76, samples from 80.
     */
    @Test
    void saysWhatIsWrongWithAFile() throws IOException {
        assertRead(b -> b, null);
        assertRead(b -> new byte[0], "is cut short: it ends at byte 0, within the file's beginning that begins at byte 0");
        assertRead(b -> Arrays.copyOf(b, 30), "is cut short: it ends at byte 30, within a chunk that begins at byte 48");
        assertRead(b -> Arrays.copyOf(b, 48), "ends at byte 48 without any samples and without saying their format");
        assertRead(b -> Arrays.copyOf(b, 72), "ends at byte 72 without any samples; it is cut short");
        assertRead(b -> Arrays.copyOf(b, 84), "is cut short: 8 bytes of samples announced, 4 there");
        assertRead(b -> put(b, 0, 0x5A5A5A5A), "is not a WAV file: it does not begin with RIFF or RF64 and WAVE");
        assertRead(b -> put(b, 8, 0x5A5A5A5A), "is not a WAV file");
        assertRead(b -> put(b, 56, 0x00020002), "holds 16-bit samples of kind 2; 16, 24 and 32-bit whole numbers");
        assertRead(b -> put(b, 68, 0x00080002), "holds 8-bit samples of kind 1");
        assertRead(b -> put(b, 68, 0x00100005), "byte 68: says 5 bytes a frame, but 2 channels of 16 bits take 4");
        assertRead(b -> put(b, 56, 0x00000001), "byte 56: says 0 channels at 48000 Hz");
        assertRead(b -> put(b, 52, 5), "byte 56: the format takes 5 bytes, at least 16 are needed");
        assertRead(b -> put(b, 76, 0), "byte 76: does not say how many samples follow");
        assertRead(b -> put(b, 76, -1), "byte 76: does not say how many samples follow");
        assertRead(b -> put(b, 76, 7), "byte 76: 7 bytes of samples are not whole frames of 4 bytes");
        assertRead(b -> put(b, 48, 0x20202020), "byte 80: samples come before their format");
        assertRead(b -> put(b, 16, 0x7FFFFFFF), "is cut short: it ends at byte 88");
    }

    @Test
    void anOddChunkIsSkippedWithItsPadByte() throws IOException {
        byte[] good = goodFile();
        ByteBuffer odd = ByteBuffer.allocate(good.length + 12).order(ByteOrder.LITTLE_ENDIAN);
        odd.put(good, 0, 48).put("note".getBytes()).putInt(3).put(new byte[] {9, 9, 9, 0}).put(good, 48, good.length - 48);
        Path file = Files.write(folder.resolve("odd.wav"), odd.array());
        try (WavReader reader = WavReader.open(file)) {
            assertThat(reader.frames()).isEqualTo(2);
        }
    }

    @Test
    void aFileThatIsNotThereIsSaidSo() {
        assertThatThrownBy(() -> WavReader.open(folder.resolve("none.wav"))).hasMessageContaining("there is no such file");
        assertThatThrownBy(() -> WavReader.open(folder)).hasMessageContaining("is not a file");
    }

    private interface Damage {
        byte[] to(byte[] good);
    }

    private void assertRead(Damage damage, String message) throws IOException {
        Path file = Files.write(folder.resolve("x.wav"), damage.to(goodFile()));
        if (message == null) {
            WavReader.open(file).close();
        } else {
            assertThatThrownBy(() -> WavReader.open(file)).isInstanceOf(Refused.class).hasMessageContaining(message);
        }
    }

    private byte[] goodFile() throws IOException {
        Path file = folder.resolve("good.wav");
        WavRender.write(Sources.constant(2, 48000, 0.5), new OutputScale(1, true), 2, SampleFormat.PCM16, 2, file, f -> {});
        return Files.readAllBytes(file);
    }

    private static byte[] put(byte[] bytes, int at, int value) {
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).putInt(at, value);
        return bytes;
    }
}
