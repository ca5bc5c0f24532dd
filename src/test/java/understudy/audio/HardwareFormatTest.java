package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HardwareFormatTest {

    @TempDir
    Path asound;

    private static Device named(String name) {
        return new Device(name, "", "", Device.Direction.OUTPUT, 1, false);
    }

    /** The file as the kernel's documentation of /proc/asound shows it. */
    @Test
    void readsWhatTheDriverTells() throws IOException {
        Path file = asound.resolve("card1/pcm0p/sub0/hw_params");
        Files.createDirectories(file.getParent());
        Files.writeString(file, """
                access: RW_INTERLEAVED
                format: S16_LE
                subformat: STD
                channels: 2
                rate: 44100 (44100/1)
                period_size: 1024
                buffer_size: 8192
                """);
        assertThat(HardwareFormat.of(named("Stick [plughw:1,0]"), asound)).contains("S16_LE, 2 channels, 44100 Hz");
        Files.writeString(file, "closed\n");
        assertThat(HardwareFormat.of(named("Stick [plughw:1,0]"), asound)).isEmpty();
    }

    @Test
    void knowsNothingOfADeviceBehindAServerOrGone() {
        assertThat(HardwareFormat.of(named("default [default]"), asound)).isEmpty();
        assertThat(HardwareFormat.of(named("Stick [plughw:7,0]"), asound)).isEmpty();
    }
}
