package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.cli.terminal.ExitCode;

/** What {@code render} writes, read back by the Java runtime's own reader of sound files. */
class RenderCommandTest {

    @TempDir
    private Path home;

    private String wheel;
    private Path out;

    @BeforeEach
    void writeWheel() throws IOException {
        wheel = Samples.write(home, "wheel.yaml", Samples.WHEEL).toString();
        out = home.resolve("a b.wav");
    }

    @Test
    void saysWhatItWrote() {
        Run.Outcome render = render();
        assertThat(render.exitCode()).isZero();
        assertThat(render.err()).isEmpty();
        assertThat(render.out()).isEqualTo(out + ": 10 s of wheel, 48000 Hz, 24 bits, 1 channel\n"
                + "volts are not calibrated: an output of 1.0 V rms is taken for granted, and yours may give 20 % less or more\n");
    }

    @Test
    void writesTheFormatAskedFor() throws Exception {
        Run.Outcome render = render("--for", "1.5 s", "--bits", "16", "--rate", "44100", "--channels", "-,crank", "--json");
        AudioFormat format = AudioSystem.getAudioFileFormat(out.toFile()).getFormat();
        assertThat(format.getSampleRate()).isEqualTo(44100);
        assertThat(format.getSampleSizeInBits()).isEqualTo(16);
        assertThat(format.getChannels()).isEqualTo(2);
        assertThat(AudioSystem.getAudioFileFormat(out.toFile()).getFrameLength()).isEqualTo(66150);
        Map<String, Object> json = JSON.std.mapFrom(render.out());
        assertThat(json).containsEntry("file", out.toString()).containsEntry("frames", 66150).containsEntry("rateHz", 44100)
                .containsEntry("bits", 16).containsEntry("channels", 2).containsEntry("calibrated", false)
                .containsEntry("clippedSamples", 0);
        short[] samples = samples(out.toFile());
        for (int i = 0; i < samples.length; i += 2) {
            // 16 bits are dithered, by at most one step either way, on every channel
            assertThat(samples[i]).as("the silent channel").isBetween((short) -1, (short) 1);
        }
        // 1.2 V of a full scale of sqrt(2) V; dither of 16 bits adds at most one step beside the rounding of a half
        assertThat((double) largest(samples)).isCloseTo(1.2 / Math.sqrt(2) * 32768, within(1.5));
    }

    @Test
    void fitBringsTheLargestOutputToNineTenths() throws Exception {
        String loud = Samples.write(home, "loud.yaml", Samples.WHEEL.replace("1.2 V", "5 V")).toString();
        Run.Outcome render = Run.in(home).understudy("render", loud, "--out", out.toString(), "--bits", "16", "--fit", "--for", "1s");
        assertThat(render.exitCode()).isZero();
        // of 5.556 V full scale an output of 1.414 V makes 0.2546 V of each volt
        assertThat(render.out()).contains("\nscaled to fit: 1 V of the pattern comes out as 255 mV\n");
        assertThat((double) largest(samples(out.toFile()))).isCloseTo(0.9 * 32768, within(1.5));
    }

    @Test
    void theProfileGivesTheLength() throws Exception {
        render("--profile", "ramp: 1200 rpm, for: 0.5 s; repeat: 2, steps: [{hold: 600 rpm, for: 250 ms}]");
        assertThat(AudioSystem.getAudioFileFormat(out.toFile()).getFrameLength()).isEqualTo(48000);
    }

    @Test
    void theSameSeedGivesTheSameFile() throws IOException {
        render("--fault", "fault: noise, rms: 10 mV", "--seed", "7", "--for", "1 s");
        byte[] first = Files.readAllBytes(out);
        render("--fault", "fault: noise, rms: 10 mV", "--seed", "7", "--for", "1 s");
        assertThat(Files.readAllBytes(out)).isEqualTo(first);
        render("--fault", "fault: noise, rms: 10 mV", "--seed", "8", "--for", "1 s");
        assertThat(Files.readAllBytes(out)).isNotEqualTo(first);
    }

    @Test
    void aSpeedWinsOverTheFilesOwnProfile() throws IOException {
        String driven = Samples.write(home, "driven.yaml",
                Samples.WHEEL + "profile:\n  - {ramp: 3000 rpm, for: 1 s}\n").toString();
        Run.in(home).understudy("render", driven, "--speed", "600 rpm", "--for", "1s", "--out", out.toString());
        byte[] driver = Files.readAllBytes(out);
        render("--for", "1s");
        assertThat(driver).isEqualTo(Files.readAllBytes(out));
    }

    @Test
    void warnsOfShapesThatAreTooQuickForTheRate() {
        assertThat(render("--speed", "6000 rpm", "--rate", "8000").err()).isEmpty();
        Run.Outcome warned = Run.in(home).understudy(
                "render", "crank-60-2-hall", "--speed", "6000 rpm", "--for", "1s", "--out", out.toString());
        assertThat(warned.exitCode()).isZero();
        assertThat(warned.err()).matches("crank keeps \\d\\d % of its swing at 6000 rpm and 48000 Hz; --rate \\d+ would do\n");
    }

    @Test
    void aFileThatCannotBeWrittenLeavesNothing() throws IOException {
        Files.createDirectories(home.resolve("folder.wav"));
        Run.Outcome render = Run.in(home).understudy("render", wheel, "--out", home.resolve("folder.wav").toString());
        assertThat(render.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(render.err()).isEqualTo(home.resolve("folder.wav") + ": is a folder; give the name of a file in it\n");
        try (Stream<Path> files = Files.list(home)) {
            assertThat(files).containsExactlyInAnyOrder(home.resolve("wheel.yaml"), home.resolve("folder.wav"));
        }
    }

    private Run.Outcome render(String... more) {
        return Run.in(home).understudy(
                Stream.concat(Stream.of("render", wheel, "--out", out.toString()), Stream.of(more)).toArray(String[]::new));
    }

    private static short[] samples(File file) throws Exception {
        try (AudioInputStream in = AudioSystem.getAudioInputStream(file)) {
            byte[] bytes = in.readAllBytes();
            short[] samples = new short[bytes.length / 2];
            for (int i = 0; i < samples.length; i++) {
                samples[i] = (short) (bytes[2 * i] & 255 | bytes[2 * i + 1] << 8);
            }
            return samples;
        }
    }

    private static int largest(short[] samples) {
        int largest = 0;
        for (short sample : samples) {
            largest = Math.max(largest, Math.abs(sample));
        }
        return largest;
    }
}
