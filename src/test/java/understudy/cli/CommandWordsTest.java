package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.cli.terminal.CommandWords;
import understudy.refusal.Control;
import understudy.refusal.Deed;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Remedy;

class CommandWordsTest {

    @ParameterizedTest
    @ValueSource(strings = {"plain", "two words", "a \"quoted\" name", "$HOME", "`id`", "back\\slash", "semi;colon", "star *", "it's", "a&b|c>d", "stop!", "it's \"so\"!"})
    void aShellReadsWhatIsPrintedAsItWasMeant(String name) throws Exception {
        for (String typed : new String[] {CommandWords.quoted(name), CommandWords.inQuotes(name)}) {
            Process shell = new ProcessBuilder("sh", "-c", "printf %s " + typed).start();
            assertThat(new String(shell.getInputStream().readAllBytes(), StandardCharsets.UTF_8)).isEqualTo(name);
            assertThat(shell.waitFor()).isZero();
        }
    }

    @Test
    void controlsAreOptionsAndDeedsAreCommands() {
        Refusal refusal = new Refusal(Location.of(Control.RATE), "too slow",
                Remedy.of("take ").set(Control.RATE, "96000").then(" or ").perform(Deed.CHANGE_RIG, "my rig"));
        assertThat(CommandWords.text(refusal)).isEqualTo("--rate: too slow; take --rate 96000 or 'understudy rig edit \"my rig\"'");
        assertThat(refusal).hasToString("sample rate: too slow; take sample rate 96000 or change that rig my rig");
    }

    @Test
    void everyOptionThatIsNamedExists() {
        StringBuilder help = new StringBuilder();
        Main.commandLine(Run.in(Path.of("target")).surroundings(new PrintWriter(System.out), new PrintWriter(System.err)))
                .getSubcommands().values().forEach(command -> help.append(command.getUsageMessage()));
        for (Control control : Control.values()) {
            if (CommandWords.option(control).startsWith("--")) {
                assertThat(help.toString()).as(control.toString()).contains(CommandWords.option(control));
            }
        }
    }
}
