package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import understudy.guide.Block;
import understudy.guide.Guide;

/** Every command line on the guide's pages, typed as it stands there, page after page. */
class GuideLinesTest {

    /** Commands that need a socket, a cable and a person: of these the line is only read. */
    private static final Set<String> BY_HAND = Set.of("calibrate");

    @TempDir
    private Path home;

    @Test
    void everyLineWorks() throws IOException {
        int run = 0;
        for (String line : lines()) {
            String command = HelpTest.words(line)[0];
            if (BY_HAND.contains(command)) {
                root().parseArgs(HelpTest.words(line));
            } else {
                boolean hunt = line.matches("trace (?!--).*");
                Run.Outcome outcome = Run.in(home).piping(hunt ? WalkTest.typed(WalkTest.cautions()) : "").understudy(here(line));
                assertThat(outcome.exitCode()).as(line + "\n" + outcome.err()).isZero();
                run++;
            }
        }
        assertThat(run).isGreaterThan(15);
        assertThat(home.resolve("wheel.svg")).isNotEmptyFile();
        assertThat(home.resolve("bench.wav")).isNotEmptyFile();
        assertThat(home.resolve("handouts/index.html")).isNotEmptyFile();
    }

    @Test
    void everyCommandHasItsPlaceOnAPage() {
        Set<String> named = lines().stream().map(line -> HelpTest.words(line)[0]).collect(Collectors.toSet());
        // a pattern file of one's own is the README's matter, completion the shell's
        assertThat(root().getSubcommands().keySet()).filteredOn(command -> !Set.of("check", "completion").contains(command))
                .allSatisfy(command -> assertThat(named).contains(command));
    }

    private CommandLine root() {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        return Main.commandLine(Run.in(home).surroundings(nowhere, nowhere));
    }

    private static List<String> lines() {
        return Guide.pages().stream().flatMap(page -> page.blocks().stream())
                .filter(Block.Verbatim.class::isInstance).flatMap(block -> ((Block.Verbatim) block).lines().stream())
                .map(line -> {
                    assertThat(line).startsWith("understudy ");
                    return line.substring("understudy ".length());
                }).toList();
    }

    /** Files go into the test's folder; playing is a short rehearsal, since no device is sure to be there. */
    private String[] here(String line) {
        List<String> words = new ArrayList<>(Arrays.asList(HelpTest.words(line)));
        words.replaceAll(word -> word.matches("[\\w-]+\\.(svg|png|wav|csv|json|html|pdf)|handouts") ? home.resolve(word).toString() : word);
        if (words.get(0).equals("play")) {
            int device = words.indexOf("--device");
            if (device > 0) {
                words.subList(device, device + 2).clear();
            }
            if (!words.contains("--to")) {
                words.addAll(List.of("--to", "silent"));
            }
            words.addAll(List.of("--for", "100 ms"));
        }
        return words.toArray(String[]::new);
    }
}
