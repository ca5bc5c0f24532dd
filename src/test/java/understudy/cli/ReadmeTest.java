package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The first session of the README, typed as it stands there. */
class ReadmeTest {

    private static final Pattern COMMAND = Pattern.compile("(?m)^scripts/understudy (.+)$");
    private static final Pattern YAML = Pattern.compile("(?s)```yaml\n(.*?)```");

    @TempDir
    private Path home;

    @Test
    void everyCommandOfTheFirstSessionWorks() throws IOException {
        String readme = Files.readString(Path.of("README.md"));
        var yaml = YAML.matcher(readme);
        assertThat(yaml.find()).isTrue();
        Files.writeString(home.resolve("my-wheel.yaml"), yaml.group(1));
        // proving an output takes a meter or a cable
        List<String> commands = COMMAND.matcher(readme.substring(0, readme.indexOf("## Prove your output"))).results().map(found -> found.group(1))
                .filter(line -> !line.startsWith(" ")).toList();
        assertThat(commands).hasSizeGreaterThan(6);
        for (String command : commands) {
            Run.Outcome outcome = Run.in(home).understudy(here(command));
            assertThat(outcome.exitCode()).as(command + "\n" + outcome.err()).isZero();
        }
        assertThat(home.resolve("crank.png")).isNotEmptyFile();
        assertThat(home.resolve("rough-ground.wav")).isNotEmptyFile();
        assertThat(home.resolve("box.svg")).isNotEmptyFile();
    }

    /** The words of a line; files are put into the test's folder, and playing is a short rehearsal. */
    private String[] here(String command) {
        List<String> words = new ArrayList<>(Arrays.asList(HelpTest.words(command)));
        words.replaceAll(word -> word.matches("[\\w-]+\\.(yaml|png|svg|wav)") ? home.resolve(word).toString() : word);
        if (words.get(0).equals("play")) {
            words.addAll(List.of("--to", "silent", "--for", "200 ms"));
        }
        return words.toArray(String[]::new);
    }
}
