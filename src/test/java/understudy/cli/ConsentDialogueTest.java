package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.bench.Agreement;
import understudy.bench.ChannelMap;
import understudy.bench.Hookups;
import understudy.bench.SignalPlan;
import understudy.cli.signal.Patterns;
import understudy.cli.terminal.ConsentDialogue;
import understudy.pattern.Hazard;
import understudy.pattern.Pattern;
import understudy.refusal.Refused;

class ConsentDialogueTest {

    private static final String QUESTION = "Have you read this, and will you work by it? Type yes to go on: ";

    @TempDir
    private Path home;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();
    private final Pattern crank = new Patterns().find("crank-36-1-vr");
    private final Pattern road = new Patterns().find("wheel-speed-44-vr");

    @Test
    void thePersonReadsTheCautionsOnce() {
        ask(Run.in(home).atTerminal("yes\n"), crank, false);
        assertThat(out.toString()).startsWith("\nRead this first.\n").endsWith(QUESTION)
                .contains("\n" + Hazard.CRANK.title() + "\n").contains("\n" + Hazard.AIRBAGS.title() + "\n")
                .doesNotContain(Hazard.WHEEL_SPEED.title());
        out.getBuffer().setLength(0);
        ask(Run.in(home).atTerminal(""), crank, false);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void aCircuitWithOtherHazardsShowsThoseOnly() {
        ask(Run.in(home).atTerminal("y\n"), crank, false);
        out.getBuffer().setLength(0);
        ask(Run.in(home).atTerminal("YES\n"), road, false);
        assertThat(out.toString()).contains(Hazard.WHEEL_SPEED.title()).doesNotContain(Hazard.AIRBAGS.title());
    }

    @Test
    void anythingButYesIsNo() throws IOException {
        for (String answer : new String[] {"no\n", "\n", "", "yes please\n"}) {
            assertThatThrownBy(() -> ask(Run.in(home).atTerminal(answer), crank, false))
                    .isInstanceOf(Refused.class).hasMessageContaining("nothing was played");
        }
        assertThat(new Agreement(Run.in(home).folders().settings()).file()).doesNotExist();
    }

    @Test
    void aYesHoldsOnlyForTheWordsThatWereRead() throws IOException {
        ask(Run.in(home).atTerminal("yes\n"), crank, false);
        Path kept = new Agreement(Run.in(home).folders().settings()).file();
        // as if the caution about airbags had other words when it was read
        String changed = Files.readString(kept).replaceAll("airbags [0-9a-f]{4}", "airbags 0000");
        Files.writeString(kept, changed);
        out.getBuffer().setLength(0);
        ask(Run.in(home).atTerminal("yes\n"), crank, false);
        assertThat(out.toString()).contains(Hazard.AIRBAGS.title()).doesNotContain(Hazard.CRANK.title());
    }

    @Test
    void aScriptMustSayYesBeforeASignalLeaves() {
        assertThatThrownBy(() -> ask(Run.in(home), crank, true)).isInstanceOf(Refused.class).hasMessage(
                "the cautions have not been read and agreed to; read them: read the cautions of crank-36-1-vr, then"
                        + " add --yes, or play once in a terminal and say yes there");
        new ConsentDialogue(Run.in(home).surroundings(new PrintWriter(out), new PrintWriter(err)), true).ask(plan(crank), true);
        assertThat(out.toString()).isEmpty();
        assertThat(new Agreement(Run.in(home).folders().settings()).file()).as("only a person's yes is kept").doesNotExist();
    }

    @Test
    void aScriptMayRehearse() {
        ask(Run.in(home), crank, false);
        assertThat(out.toString())
                .isEqualTo("before a signal leaves this machine, read 'understudy cautions crank-36-1-vr'\n");
    }

    @Test
    void aYesThatCannotBeKeptIsAYesAllTheSame() throws IOException {
        // a file where the folder should be
        Files.writeString(home.resolve(".config"), "");
        ask(Run.in(home).atTerminal("yes\n"), crank, true);
        assertThat(err.toString()).isEqualTo("your yes could not be kept in "
                + home.resolve(".config/understudy/cautions-read.txt") + ", so you will be asked again\n");
    }

    private void ask(Run run, Pattern pattern, boolean leaves) {
        new ConsentDialogue(run.surroundings(new PrintWriter(out), new PrintWriter(err)), false).ask(plan(pattern), leaves);
    }

    private static SignalPlan plan(Pattern pattern) {
        return SignalPlan.of(pattern, pattern.speed().defaultHz(), SignalPlan.DEFAULT_RATE_HZ, ChannelMap.all(pattern),
                Hookups.NONE, false);
    }

    @Test
    void aYesInARehearsalDoesNotLetASignalOut() {
        ask(Run.in(home).atTerminal("yes\n"), crank, false);
        out.getBuffer().setLength(0);
        ask(Run.in(home).atTerminal("yes\n"), crank, true);
        assertThat(out.toString()).contains(Hazard.CRANK.title(), Hazard.AIRBAGS.title());
        out.getBuffer().setLength(0);
        // but one for a signal that leaves counts for a rehearsal too
        ask(Run.in(home).atTerminal(""), crank, true);
        ask(Run.in(home).atTerminal(""), crank, false);
        assertThat(out.toString()).isEmpty();
    }

    @Test
    void anOutputWithoutARigIsSaidToBeUnchecked() {
        ask(Run.in(home).atTerminal("yes\n"), crank, false);
        assertThat(out.toString()).doesNotContain(Hazard.UNCHECKED.title());
        out.getBuffer().setLength(0);
        ask(Run.in(home).atTerminal("yes\n"), crank, true);
        assertThat(out.toString()).containsOnlyOnce(Hazard.UNCHECKED.title());
        assertThat(out.toString().indexOf(Hazard.UNCHECKED.title())).as("comes first")
                .isLessThan(out.toString().indexOf(Hazard.CRANK.title()));
    }
}
