package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileLineTest {

    private static final int FRAME_BYTES = 3;

    @TempDir
    private Path folder;

    @Test
    void keepsWhatThePaceTookAndNothingElse() throws Exception {
        Path target = folder.resolve("kept.wav");
        FileLine line = line(target);
        byte[] bytes = new byte[100 * FRAME_BYTES];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) i;
        }
        // the line holds 80 frames before it is started, whatever is offered; the offset counts
        assertThat(line.write(bytes, 0, 50 * FRAME_BYTES)).isEqualTo(50 * FRAME_BYTES);
        assertThat(line.write(bytes, 50 * FRAME_BYTES, 50 * FRAME_BYTES)).isEqualTo(30 * FRAME_BYTES);
        assertThat(target).doesNotExist();
        line.close();
        assertThat(line.failure()).isEmpty();
        byte[] file = Files.readAllBytes(target);
        byte[] samples = Arrays.copyOfRange(file, file.length - 80 * FRAME_BYTES, file.length);
        assertThat(samples).isEqualTo(Arrays.copyOf(bytes, 80 * FRAME_BYTES));
    }

    @Test
    void aFileThatCannotBeKeptIsToldAndTakesNoMore() throws Exception {
        Path place = Files.createDirectories(folder.resolve("place"));
        FileLine line = line(place.resolve("x.wav"));
        try (Stream<Path> files = Files.list(place)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(place);
        line.close();
        assertThat(line.failure().orElseThrow()).startsWith(place.resolve("x.wav") + ": could not be written");
        assertThat(line.write(new byte[FRAME_BYTES], 0, FRAME_BYTES)).isZero();
    }

    @Test
    void everyByteArrivesHoweverLongItIs() throws Exception {
        Path target = folder.resolve("long.wav");
        int blocks = 400; // of 60 000 bytes: three times round what is kept in memory
        FileLine line = new FileLine(new SilentLine(48_000, FRAME_BYTES, blocks * 20_000, Clock.SYSTEM),
                WavWriter.create(target, 1, 48_000, SampleFormat.PCM24));
        Random random = new Random(1);
        MessageDigest sent = MessageDigest.getInstance("SHA-256");
        byte[] bytes = new byte[60_000];
        for (int i = 0; i < blocks; i++) {
            random.nextBytes(bytes);
            sent.update(bytes);
            assertThat(line.write(bytes, 0, bytes.length)).isEqualTo(bytes.length);
            Thread.sleep(2); // 30 MB a second is a hundred times what four channels bring
        }
        line.close();
        assertThat(line.failure()).isEmpty();
        byte[] file = Files.readAllBytes(target);
        byte[] kept = Arrays.copyOfRange(file, file.length - blocks * bytes.length, file.length);
        assertThat(MessageDigest.getInstance("SHA-256").digest(kept)).isEqualTo(sent.digest());
    }

    private static FileLine line(Path target) {
        return new FileLine(new SilentLine(48_000, FRAME_BYTES, 80, Clock.SYSTEM),
                WavWriter.create(target, 1, 48_000, SampleFormat.PCM24));
    }
}
