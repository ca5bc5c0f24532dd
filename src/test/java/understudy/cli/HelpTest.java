package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import understudy.cli.terminal.Keys;

class HelpTest {

    @TempDir
    private Path home;

    @Test
    void theOverviewNamesEveryCommand() {
        Run.Outcome help = Run.in(home).understudy("--help");
        assertThat(help.exitCode()).isZero();
        assertThat(help.err()).isEmpty();
        assertThat(help.out()).isEqualTo("""
                Usage: understudy [-hV] COMMAND
                Stands in for a sensor: plays the sensor's signal from an audio output.
                  -h, --help      Shows this help.
                  -V, --version   Shows the version.

                Commands:
                  patterns    Lists the patterns that come with Understudy.
                  show        Shows one pattern: its purpose, its events, how it looks.
                  check       Lists everything that is wrong with pattern and circuit files.
                  play        Plays a pattern's signal to an audio output.
                  render      Writes a pattern's signal to a WAV file.
                  measure     Measures a recording, or what comes in at an audio input.
                  calibrate   Proves an audio output, with a meter or with one patch cable.
                  devices     Lists the audio devices, and what each really opens with.
                  rig         Keeps your rigs: output, calibration, the divider as built.
                  divider     Chooses the resistors of the box, within the limits; draws it.
                  input       Finds what kind of input a pin is, from a meter's readings.
                  preflight   Computes at which speeds an input decodes, before you clip on.
                  trace       Leads a fault hunt: where to inject, what it says, where next.
                  report      Writes the report on a job, for the customer: as HTML or PDF.
                  jobs        Lists, shows, corrects, exports, archives and removes your jobs.
                  expect      Computes what the module should display, and learns its scale.
                  sweep       Runs a module through many speeds, and logs what it displays.
                  cautions    Shows what can hurt people or machines, and what to do about it.
                  guide       Shows how to build the box, wire it and use it, page by page.
                  completion  Prints completion for bash and zsh.

                Examples:
                  understudy patterns
                  understudy show crank-36-1-vr
                  understudy play crank-36-1-vr --speed "800 rpm"

                A command's own help: understudy play --help
                Exit codes: 0 fine, 1 failed, 2 bad input (then nothing was done).
                """);
    }

    @Test
    void playHelp() {
        assertThat(Run.in(home).understudy("play", "--help").out()).isEqualTo("""
                Usage: understudy play [OPTIONS] PATTERN
                Plays a pattern's signal to an audio output.
                      PATTERN              A pattern, by name or file.
                  -h, --help               Shows this help.
                      --speed=SPEED        Speed, like "800 rpm", "120 Hz" or "45 km/h".
                      --rate=RATE          Samples a second, like 48000 or "96 kHz" (default:
                                             48000).
                      --channels=OUTPUTS   Outputs in channel order, like crank,cam or -,crank
                                             (- is a silent channel), or a number of channels.
                      --profile=STEPS      Speed over time: a file, or steps like "ramp: 6000
                                             rpm, from: 500 rpm, for: 5 s; hold: 6000 rpm, for:
                                             2 s".
                      --fault=FAULT        A fault of the pattern by its name, or a new one
                                             like "fault: weak tooth, tooth: 5, strength: 40
                                             %". May be given again.
                      --seed=NUMBER        Starts everything that goes by chance; the same
                                             number, the same signal.
                      --fit                Scales all outputs alike, the largest to 90 % of
                                             full scale.
                      --rig=NAME           The rig it goes through; volts are then volts at the
                                             pins. Needs --input. With OUTPUT= before it, like
                                             cam=hall-box, it holds for that output alone; may
                                             be given again.
                      --input=KIND         The module's input: a kind that 'understudy input'
                                             lists, like reluctor-adaptive, with what you know
                                             of it, like "pulled-up-5-v, pull-up: 10k 5%, low:
                                             1.5 V". With OUTPUT= before it, like
                                             cam=resistive, it holds for that output alone; may
                                             be given again.
                      --for=TIME           Plays so long, like "30 s" (default: until stopped).
                      --device=NAME        The audio output, or a part of its name (default:
                                             the system's).
                      --to=PLACE           silent: rehearses in real time; or a file (WAV).
                                             Nothing leaves the machine.
                      --last               With the rig, the input and the speed with which
                                             this pattern was played last.
                      --latency=TIME       How much is sent ahead, 5 ms to 1 s: a key acts so
                                             much later.
                      --yes                Says yes to the cautions, for this time; for scripts.

                Examples:
                  understudy play crank-36-1-vr --speed "800 rpm"
                  understudy play crank-36-1-vr --device "USB" --for "30 s"
                  understudy play wheel-speed-44-vr --fault "fault: dropout, length: 30 ms"
                  understudy play crank-36-1-vr --to silent

                Keys while it plays: up and down change the speed, right and left change it a
                little, s lets you type one, + and - change the level, 1 to 9 switch faults,
                space stops.
                """);
    }

    @ParameterizedTest
    @ValueSource(strings = {"patterns", "show", "check", "play", "render", "devices", "rig", "rig make", "rig list", "rig show",
        "rig edit", "rig remove", "divider", "input", "trace", "report", "jobs", "jobs list",
        "jobs show", "jobs export", "jobs import", "jobs archive", "jobs unarchive", "jobs remove", "expect", "sweep", "cautions", "guide", "completion"})
    void everyCommandHasHelpWithExamplesThatFitsTheScreen(String command) {
        Run.Outcome help = Run.in(home).understudy((command + " --help").split(" "));
        assertThat(help.exitCode()).isZero();
        assertThat(help.out()).startsWith("Usage: understudy " + command).contains("\nExamples:\n  ");
        assertThat(help.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @Test
    void theExamplesInTheHelpAreRight() {
        CommandLine root = Main.commandLine(Run.in(home).surroundings(new PrintWriter(Writer.nullWriter()),
                new PrintWriter(Writer.nullWriter())));
        // parsed, not run: every option in an example exists where the example uses it
        root.getSubcommands().values().stream()
                .flatMap(command -> Stream.concat(Stream.of(command), command.getSubcommands().values().stream()))
                .forEach(command -> Arrays.stream(command.getCommandSpec().usageMessage().footer())
                .map(line -> String.format(line).strip())
                .filter(line -> line.startsWith("understudy "))
                .forEach(line -> root.parseArgs(words(line.substring("understudy ".length()).replaceAll(" +>.*", "")))));
    }

    static String[] words(String line) {
        return Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(line).results()
                .map(word -> word.group(1) != null ? word.group(1) : word.group(2)).toArray(String[]::new);
    }

    @Test
    void coloursAreForPeopleWhoWantThem() {
        assertThat(colours(true, Map.of("TERM", "xterm"))).isTrue();
        assertThat(colours(true, Map.of("TERM", "xterm", "NO_COLOR", ""))).as("an empty NO_COLOR does not count").isTrue();
        assertThat(colours(true, Map.of("TERM", "xterm", "NO_COLOR", "1"))).isFalse();
        assertThat(colours(true, Map.of("TERM", "dumb"))).isFalse();
        assertThat(colours(false, Map.of("TERM", "xterm"))).isFalse();
    }

    private boolean colours(boolean terminal, Map<String, String> env) {
        Run run = Run.in(home).withEnv(env);
        return (terminal ? run.atTerminal("") : run).understudy("--help").out().contains("\033[");
    }

    @Test
    void versionSaysWhereItIsFrom() {
        assertThat(Run.in(home).understudy("--version").out()).startsWith("understudy ");
    }

    @Test
    void bashUnderstandsTheCompletion() throws Exception {
        Path script = home.resolve("completion.bash");
        Files.writeString(script, Run.in(home).understudy("completion").out());
        Process bash = new ProcessBuilder("bash", "-c",
                "set -e; source \"$1\"; COMP_WORDS=(understudy pl); COMP_CWORD=1; _complete_understudy; echo \"${COMPREPLY[@]}\"",
                "bash", script.toString()).redirectErrorStream(true).start();
        String said = new String(bash.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(bash.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(said.strip()).isEqualTo("play");
    }

    /** A real bash sources the script; the program that it asks is a stand-in that runs this one's names. */
    @Test
    void bashCompletesNames() throws Exception {
        try (understudy.store.Store store = Run.in(home).store()) {
            store.jobs().begin(understudy.store.JobSamples.fresh("my hunt"));
        }
        Run.in(home).understudy("rig", "make", "other");
        Path script = home.resolve("completion.bash");
        Files.writeString(script, Run.in(home).understudy("completion").out());
        Path program = home.resolve("understudy");
        Files.writeString(program, "#!/bin/sh\nexec '" + System.getProperty("java.home") + "/bin/java' -Duser.home='" + home + "' -cp '"
                + System.getProperty("java.class.path") + "' understudy.cli.Main \"$@\"\n");
        assertThat(program.toFile().setExecutable(true)).isTrue();
        assertThat(completed(script, program, "report my")).isEqualTo("my\\ hunt");
        assertThat(completed(script, program, "play --rig o")).isEqualTo("other");
        assertThat(completed(script, program, "play crank-36-1")).startsWith("crank-36-1-");
        assertThat(completed(script, program, "guide wir")).isEqualTo("wiring");
        assertThat(completed(script, program, "trace fieldhand-4-s")).isEqualTo("fieldhand-4-speedometer");
        assertThat(completed(script, program, "play --sp")).isEqualTo("--speed");
    }

    private String completed(Path script, Path program, String typed) throws Exception {
        ProcessBuilder bash = new ProcessBuilder("bash", "-c", "source \"$1\"; COMP_WORDS=(\"$2\" $3); COMP_CWORD=$((${#COMP_WORDS[@]} - 1));"
                + " _understudy_names; echo \"${COMPREPLY[@]}\"", "bash", script.toString(), program.toString(), typed).redirectError(ProcessBuilder.Redirect.DISCARD);
        Process shell = bash.start();
        String said = new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(shell.waitFor(60, TimeUnit.SECONDS)).isTrue();
        return said.strip();
    }

    @Test
    void whatIsSuggestedCanBeTypedFromWhereTheUserStands() {
        Run called = Run.in(home).withEnv(java.util.Map.of("UNDERSTUDY_CALLED", "../scripts/understudy"));
        try {
            assertThat(called.understudy("rig", "list").out()).contains("'../scripts/understudy rig make NAME'");
            String help = called.understudy("play", "--help").out();
            assertThat(help).startsWith("Usage: ../scripts/understudy play").contains("\n  ../scripts/understudy play ")
                    .doesNotContain("\n  understudy play");
            assertThat(called.understudy("completion").out()).doesNotContain("../scripts");
        } finally {
            Run.in(home).understudy("--version"); // a process is called one way; the next test's is called by its name
        }
    }
}
