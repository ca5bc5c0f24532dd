package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.Duration;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("real-time")
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
            while (line.pendingBytes() > 4_000_000) {
                Thread.sleep(1); // whoever plays gives a hundredth of this a second
            }
        }
        line.close();
        assertThat(line.failure()).isEmpty();
        byte[] file = Files.readAllBytes(target);
        byte[] kept = Arrays.copyOfRange(file, file.length - blocks * bytes.length, file.length);
        assertThat(MessageDigest.getInstance("SHA-256").digest(kept)).isEqualTo(sent.digest());
    }

    /** A disk that takes nothing until it is let go. */
    private static final class StuckDisk implements FileLine.Sink {
        private final CountDownLatch free = new CountDownLatch(1);
        private final CountDownLatch closed = new CountDownLatch(1);
        private boolean committed;

        @Override
        public Path target() {
            return Path.of("stuck.wav");
        }

        @Override
        public void write(byte[] bytes, int offset, int length) {
            try {
                free.await();
            } catch (InterruptedException e) {
                throw new AssertionError(e);
            }
        }

        @Override
        public void commit() {
            committed = true;
        }

        @Override
        public void close() {
            closed.countDown();
        }
    }

    @Test
    void aDiskThatIsStuckHoldsNobodyUpAndIsReported() throws Exception {
        StuckDisk disk = new StuckDisk();
        FileLine line = new FileLine(new SilentLine(48_000, FRAME_BYTES, 100_000, Clock.SYSTEM), disk, Duration.ofMillis(50));
        // were the disk asked, this would never return
        assertThat(line.write(new byte[60_000], 0, 60_000)).isEqualTo(60_000);
        assertThat(line.failure()).isEmpty();
        line.close();
        assertThat(line.failure().orElseThrow()).startsWith("stuck.wav: the disk did not take the file in time");
        assertThat(line.patience()).isGreaterThan(Duration.ofMillis(50));
        disk.free.countDown();
        disk.closed.await();
        assertThat(disk.committed).as("what was given up does not appear later").isFalse();
    }

    @Test
    void aDiskThatIsTooSlowEndsThePlaying() {
        FileLine line = new FileLine(new SilentLine(48_000, FRAME_BYTES, 10_000_000, Clock.SYSTEM), new StuckDisk(), Duration.ofMillis(50));
        byte[] bytes = new byte[600_000];
        int blocks = 0;
        while (blocks < 100 && line.write(bytes, 0, bytes.length) > 0) {
            blocks++;
        }
        assertThat(blocks).as("of 600 kB in 8 MiB").isEqualTo(13);
        assertThat(line.failure().orElseThrow()).startsWith("stuck.wav: the disk takes less than the signal brings");
    }

    private static FileLine line(Path target) {
        return new FileLine(new SilentLine(48_000, FRAME_BYTES, 80, Clock.SYSTEM),
                WavWriter.create(target, 1, 48_000, SampleFormat.PCM24));
    }
}
