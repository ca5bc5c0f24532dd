package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.cli.terminal.ExitCode;

/** What a newcomer types wrong: exit code 2, the whole of what is said, and nothing done. */
class BadInputTest {

    @TempDir
    private Path home;

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            pley|understudy: there is no command 'pley'; did you mean play?
            --verison|understudy: there is no option '--verison'; did you mean --version?
            play|play: PATTERN is missing
            play sine --sped 1kHz|play: there is no option '--sped'; did you mean --seed or --speed?
            play sine --speed|play: --speed needs SPEED behind it
            play sine --speed --for 2s|play: --speed needs SPEED behind it
            play sine --speed 1 kHz|play: 'kHz' is one word too many; a value with a space in it needs quotes, like --speed "800 rpm"
            render sine|render: --out is missing
            check|check: FILE is missing
            divider|divider: --input is missing
            """)
    void aCommandLineThatCannotBeRead(String typed, String said) {
        Run.Outcome outcome = Run.in(home).understudy(typed.split(" "));
        String command = typed.contains(" ") || said.startsWith(typed) ? "understudy " + typed.split(" ")[0] : "understudy";
        assertThat(outcome.err()).isEqualTo(said + "\n'" + command + " --help' shows more\n");
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            crank-36-1-vrr|crank-36-1-vrr: there is no pattern of this name; did you mean crank-36-1-vr or crank-60-2-vr?
            ./nosuch.yaml|./nosuch.yaml:1:1: there is no such file; look at how its name and folder are spelled
            crank-60-2-hall --speed 9000rpm|--speed: the speed 9000 rpm is out of this pattern's range; allowed are 20 rpm to 8000 rpm
            crank-60-2-hall --speed 800kg|--speed: the unit "kg" is not known; write a turning speed or a frequency like 800 rpm (units: rpm, Hz)
            crank-60-2-hall --speed 45km/h|--speed: "45 km/h" is a road speed; write a turning speed or a frequency like 800 rpm (units: rpm, Hz)
            sine --rate 12|--rate: 12 Hz is out of range; allowed are 8 kHz to 768 kHz
            sine --rate cd|--rate: "cd" is not a frequency; write a frequency like 100 Hz
            sine --seed -1|--seed: "-1" will not do; give a whole number from 0 to 2147483647
            sine --channels 0|--channels: "0" will not do; give a whole number from 1 to 32
            sine --channels tome|--channels: sine has no output named "tome"; its outputs are tone; a silent channel is -
            sine --channels -|--channels: every channel is silent; name at least one of tone
            crank-36-1-cam-1-hall --channels 1|--channels: 2 outputs do not fit into 1 channel; name those that you want, for instance --channels crank
            crank-60-2-hall --fault rust|--fault:1:1: the pattern declares no fault named "rust"; describe one: "fault: dropout, length: 30 ms"
            crank-60-2-hall --profile nosuch.yaml|nosuch.yaml:1:1: there is no such file; look at how its name and folder are spelled
            crank-60-2-hall --speed 8000rpm --rate 8000|--rate: too little would be left of the signal; crank keeps 0 % of its swing at 8000 rpm and 8000 Hz; --rate 96000 would do
            """)
    void aSignalThatCannotBe(String typed, String said) throws IOException {
        for (String[] command : new String[][] {
            {"play", "--to", "silent"}, {"render", "--out", home.resolve("x.wav").toString()}
        }) {
            Run.Outcome outcome = Run.in(home).understudy(
                    Stream.concat(Arrays.stream(command), Arrays.stream(typed.split(" "))).toArray(String[]::new));
            assertThat(outcome.err()).isEqualTo(said + "\n");
            assertThat(outcome.out()).isEmpty();
            assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        }
        assertNothingWritten();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            render sine --out x|--out: "x" is no name for a sound file; give a name that ends in .wav
            render sine --out x.wav --bits 20|--bits: "20" is no sample format; give 16, 24, 32 or float
            render sine --out x.wav --for 10kg|--for: the unit "kg" is not known; write a time like 2 s (units: s, min, h)
            render sine --out x.wav --for -1s|--for: -1 s is out of range; allowed are 1 ms to 1000000 s
            render sine --out nosuch/x.wav|nosuch/x.wav: there is no folder HERE/nosuch; make it first
            play sine --for 0s|--for: 0 s is out of range; allowed are 100 ms to 1000000 s
            play sine --latency 2s|--latency: 2 s is out of range; allowed are 5 ms to 1 s
            play sine --to file|--to: "file" is no name for a sound file; give silent, or a name that ends in .wav
            play sine --to nosuch/x.wav|nosuch/x.wav: there is no folder HERE/nosuch; make it first
            play sine --to silent --device x|--to: it does not go together with --device; leave one of them out
            show sine --plot x.gif|--plot: "x.gif" is no name for a picture; give a name that ends in .png or .svg
            show sine --plot nosuch/x.png|--plot: there is no folder HERE/nosuch; make it first
            """)
    void anOptionThatCannotBe(String typed, String said) throws IOException {
        Run.Outcome outcome = Run.in(home).understudy(typed.split(" "));
        assertThat(outcome.err()).isEqualTo(said.replace("HERE", Path.of("").toAbsolutePath().toString()) + "\n");
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(Path.of("x.wav")).doesNotExist();
        assertNothingWritten();
    }

    @Test
    void everythingWrongIsSaidAtOnce() throws IOException {
        Run.Outcome outcome = Run.in(home).understudy("render", "sine", "--speed", "1 MHz", "--rate", "3", "--seed", "x",
                "--channels", "left", "--bits", "8", "--for", "ever", "--out", "x");
        assertThat(outcome.err()).isEqualTo("""
                --speed: the speed 1 MHz is out of this pattern's range; allowed are 1 Hz to 20 kHz
                --seed: "x" will not do; give a whole number from 0 to 2147483647
                --rate: 3 Hz is out of range; allowed are 8 kHz to 768 kHz
                --channels: sine has no output named "left"; its outputs are tone; a silent channel is -
                --for: "ever" is not a time; write a time like 2 s (units: s, min, h)
                --bits: "8" is no sample format; give 16, 24, 32 or float
                --out: "x" is no name for a sound file; give a name that ends in .wav
                """);
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertNothingWritten();
    }

    @Test
    void withoutACommandTheOverviewIsShownAsAProblem() {
        Run.Outcome outcome = Run.in(home).understudy();
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err()).isEqualTo(Run.in(home).understudy("--help").out());
    }

    @Test
    void aPatternThatNeedsMoreVoltsIsRefusedWithTheNumber() throws IOException {
        Path loud = Samples.write(home, "loud.yaml", Samples.WHEEL.replace("-1.2 V", "-2.5 V").replace("1.2 V", "2.5 V"));
        Run.Outcome outcome = Run.in(home).understudy("render", loud.toString(), "--out", home.resolve("x.wav").toString());
        assertThat(outcome.err()).isEqualTo("loud: its output crank reaches 2.5 V, more than the 1.414 V peak that an audio"
                + " output is taken to give; add --fit to have all outputs scaled down alike\n");
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(home.resolve("x.wav")).doesNotExist();
    }

    private void assertNothingWritten() throws IOException {
        try (Stream<Path> files = Files.list(home)) {
            assertThat(files).isEmpty();
        }
    }
}
