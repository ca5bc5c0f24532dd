package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.jline.terminal.Attributes;
import org.jline.terminal.Size;
import org.jline.terminal.Terminal;
import org.jline.terminal.impl.ExternalTerminal;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.cli.terminal.ExitCode;

/** Rehearsals: all of {@code play} but the sound card. */
@Tag("real-time")
class PlayCommandTest {

    @TempDir
    private Path home;

    private String wheel;

    @BeforeEach
    void writeWheel() throws IOException {
        wheel = Samples.write(home, "wheel.yaml", Samples.WHEEL
                + "faults:\n  - {fault: missing tooth, tooth: 2, name: gone, switched: off}\n").toString();
    }

    @Test
    void aRehearsalSaysSoFirstAndEndsWithAReport() {
        Run.Outcome play = Run.in(home).understudy("play", wheel, "--to", "silent", "--for", "300 ms");
        assertThat(play.err()).isEmpty();
        assertThat(play.exitCode()).isZero();
        List<String> lines = play.out().lines().toList();
        assertThat(lines.subList(0, 3)).containsExactly(
                "rehearsing silently, in real time; nothing leaves the machine",
                "before a signal leaves this machine, read 'understudy cautions wheel'",
                "volts are not calibrated: an output of 1.0 V rms is taken for granted, and yours may give 20 % less or more");
        assertThat(lines.get(3)).matches("finished after 0\\.\\d s, \\d+ frames at 48000 Hz, in silence");
        assertThat(play.out()).doesNotContain("\r").doesNotContain("\033");
    }

    @Test
    void keysChangeSpeedLevelAndFaultsUntilSpaceStops() throws IOException {
        ByteArrayOutputStream screen = new ByteArrayOutputStream();
        Terminal terminal = terminal("\033[A\033[C-1 ", screen);
        Attributes before = terminal.getAttributes();
        Run.Outcome play = Run.in(home).atTerminal("yes\n").withTerminal(terminal).understudy("play", wheel, "--to", "silent");
        assertThat(play.exitCode()).isZero();
        assertThat(play.out()).contains(
                "\nup, down: speed   right, left: speed a little   s: type a speed   +, -: level   space: stop\nfaults: 1 gone\n");
        assertThat(play.out()).containsPattern("\nstopped after 0\\.\\d s, ");
        String shown = screen.toString(StandardCharsets.UTF_8);
        assertThat(shown).contains("\r600 rpm | level 100 % | underruns ").contains(" | level 95 % | ").contains(" | faults gone | ");
        assertThat(terminal.getAttributes().getLocalFlags()).isEqualTo(before.getLocalFlags());
    }

    @Test
    void aSpeedIsTypedWhileItPlays() throws IOException {
        ByteArrayOutputStream screen = new ByteArrayOutputStream();
        // one that the pattern does not reach, one with a slip that is taken back, then stop
        Terminal terminal = terminal("s99999\rs91\1770\r ", screen);
        Run.Outcome play = Run.in(home).atTerminal("yes\n").withTerminal(terminal).understudy("play", wheel, "--to", "silent");
        assertThat(play.exitCode()).isZero();
        String shown = screen.toString(StandardCharsets.UTF_8);
        assertThat(shown).contains("\rspeed in rpm, then Enter: 99999\033")
                .containsPattern("\rthe speed 99999 rpm is out of this pattern's range; allowed are [^\r]* rpm")
                .contains("\rspeed in rpm, then Enter: 90\033");
        assertThat(play.out()).doesNotContain("defect").contains("\nstopped after ");
        assertThat(shown).as("a digit of the speed is no fault's number").doesNotContain("faults gone");
    }

    @Test
    void whatTheHandDoesCanBeKeptInAFile() throws Exception {
        Path kept = home.resolve("kept.wav");
        Run.Outcome play = Run.in(home).understudy("play", wheel, "--to", kept.toString(), "--for", "400 ms");
        assertThat(play.err()).isEmpty();
        assertThat(play.out()).startsWith("playing into " + kept + ", in real time; nothing leaves the machine\n")
                .contains(" 24 bits, into " + kept + "\n");
        AudioFormat format = AudioSystem.getAudioFileFormat(kept.toFile()).getFormat();
        assertThat(format.getSampleSizeInBits()).isEqualTo(24);
        // 0.4 s of signal with its fades; silence, as after any playing, may follow
        assertThat(AudioSystem.getAudioFileFormat(kept.toFile()).getFrameLength()).isBetween(19_200, 48_000);
        try (AudioInputStream in = AudioSystem.getAudioInputStream(kept.toFile())) {
            byte[] bytes = in.readAllBytes();
            int largest = 0;
            for (int i = 0; i < bytes.length; i += 3) {
                largest = Math.max(largest, Math.abs(bytes[i] & 255 | (bytes[i + 1] & 255) << 8 | bytes[i + 2] << 16));
            }
            // 1.2 V of sqrt(2) V, rounded to a step of 24 bits
            assertThat((double) largest).isCloseTo(1.2 / Math.sqrt(2) * 0x1p23, within(1.0));
        }
    }

    @Test
    void aNarrowTerminalGetsNoLineThatWraps() throws IOException {
        ByteArrayOutputStream screen = new ByteArrayOutputStream();
        Terminal terminal = terminal("q", screen);
        terminal.setSize(new Size(30, 10));
        Run.in(home).atTerminal("yes\n").withTerminal(terminal).understudy("play", wheel, "--to", "silent");
        assertThat(screen.toString(StandardCharsets.UTF_8).split("\r|\033\\[K")).allSatisfy(line -> assertThat(line.strip()).hasSizeLessThan(30));
    }

    @Test
    void aKeyboardThatGoesAwayStopsIt() throws IOException {
        Run.Outcome play = Run.in(home).atTerminal("yes\n").withTerminal(terminal("", new ByteArrayOutputStream()))
                .understudy("play", wheel, "--to", "silent");
        assertThat(play.exitCode()).isZero();
        assertThat(play.out()).containsPattern("\nstopped after ");
    }

    @Test
    void aNoPlaysNothing() {
        Run.Outcome play = Run.in(home).atTerminal("no\n").understudy("play", wheel, "--to", "silent");
        assertThat(play.exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(play.err()).isEqualTo("nothing was played\n");
        assertThat(play.out()).doesNotContain("stopped");
    }

    @Test
    void aDefectLeavesItsDetails() throws IOException {
        Run.Outcome play = Run.in(home).atTerminal("yes\n").withTerminals(() -> {
            throw new IllegalStateException("made for this test");
        }).understudy("play", wheel, "--to", "silent");
        Path details = home.resolve(".local/state/understudy/defect-20260301-120000.txt");
        assertThat(play.exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(play.err()).isEqualTo("this is a defect in Understudy: java.lang.IllegalStateException: made for this test\n"
                + "the details are in " + details + "; please send them with what you were doing\n");
        assertThat(Files.readString(details)).contains("IllegalStateException: made for this test").contains("\tat ");
    }

    @Test
    void interruptingTheProcessStopsItInGoodOrder() throws Exception {
        for (String signal : new String[] {"INT", "TERM"}) {
            // a test run in the background may have been told to ignore interrupts, and would pass that on
            Process play = new ProcessBuilder(
                    "env", "--default-signal", Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-cp", System.getProperty("java.class.path"), "understudy.cli.Main", "play", wheel, "--to", "silent")
                    .redirectError(ProcessBuilder.Redirect.INHERIT).start();
            play.getOutputStream().close();
            var lines = play.inputReader(StandardCharsets.UTF_8);
            // the last line before it plays; then a moment, so that the signal meets it playing
            while (!lines.readLine().startsWith("volts are not calibrated")) {
                // reads on
            }
            Thread.sleep(1000);
            new ProcessBuilder("kill", "-" + signal, "" + play.pid()).start().waitFor();
            if (!play.waitFor(20, TimeUnit.SECONDS)) {
                play.destroyForcibly();
                throw new AssertionError(signal + " did not end it");
            }
            assertThat(play.exitValue()).isZero();
            String rest = String.join("\n", lines.lines().toList());
            assertThat(rest).contains("stopped after ");
        }
    }

    /** A terminal whose keys are typed already, one after another, and whose keyboard is then unplugged. */
    private static Terminal terminal(String typed, ByteArrayOutputStream screen) throws IOException {
        InputStream keys = new ByteArrayInputStream(typed.getBytes(StandardCharsets.US_ASCII));
        ExternalTerminal terminal = new ExternalTerminal("test", "xterm", keys, screen, StandardCharsets.UTF_8);
        terminal.setSize(new Size(120, 40));
        return terminal;
    }
}
