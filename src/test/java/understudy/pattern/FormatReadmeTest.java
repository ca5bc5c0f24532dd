package understudy.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import org.junit.jupiter.api.Test;

/** The format's description can't fall behind: its examples are read, and every key and word is in it. */
class FormatReadmeTest {
    private static final String HEAD = "title: T\npurpose: P\nsource: S\n";
    private static final String SPEED = "speed: {default: 800 rpm, from: 20 rpm, to: 8000 rpm}\n";
    private static final String WHEEL = "outputs:\n  - name: crank\n    wheel: {teeth: 36}\n";
    private static final String REST = "    reluctor: {peak-to-peak: 1 V, at: 200 rpm, ceiling: 2 V, pole: 30 %}\n";

    private static String readme() throws IOException {
        return Files.readString(Path.of("patterns/README.md"));
    }

    private static List<String> examples() throws IOException {
        List<String> examples = new ArrayList<>();
        Matcher matcher = java.util.regex.Pattern.compile("```yaml\n(.*?)```", java.util.regex.Pattern.DOTALL).matcher(readme());
        while (matcher.find()) {
            if (matcher.group(1).startsWith("wheel:")) { // several, a line each
                examples.addAll(matcher.group(1).lines().toList());
            } else {
                examples.add(matcher.group(1).stripTrailing());
            }
        }
        return examples;
    }

    /** The example where it belongs, in a file that is otherwise whole. */
    private static String file(String example) {
        String key = example.substring(0, example.indexOf(':'));
        String line = "    " + example + "\n";
        return switch (key) {
            case "title" -> example;
            case "speed" -> HEAD + example + "\n" + WHEEL + REST.replace("200 rpm", "5 km/h");
            case "outputs" -> HEAD + SPEED + example;
            case "wheel" -> HEAD + SPEED + "outputs:\n  - name: crank\n" + line + REST;
            case "hall", "reluctor" -> HEAD + SPEED + WHEEL + line;
            case "tone", "bursts", "cycle" -> HEAD + SPEED + "outputs:\n  - name: crank\n" + line;
            default -> HEAD + SPEED + WHEEL + REST + example;
        };
    }

    @Test
    void everyExampleReads() throws IOException {
        assertThat(examples()).hasSizeGreaterThan(12);
        for (String example : examples()) {
            assertThat(PatternReader.read("example.yaml", file(example)).problems()).as(file(example)).isEmpty();
            assertThat(Corpus.judge(Corpus.schema(), file(example))).as(file(example)).isEmpty();
        }
    }

    @Test
    void everyKeyAndWordOfTheSchemaIsDescribed() throws IOException {
        Set<String> words = new TreeSet<>();
        collect(new ObjectMapper().readTree(Files.readString(Path.of("patterns/pattern.schema.json"))), words);
        assertThat(words).contains("missing-at", "weak tooth", "reversed");
        String readme = readme();
        assertThat(words.stream().filter(word -> !readme.contains("`" + word + "`"))).isEmpty();
    }

    private static void collect(JsonNode node, Set<String> words) {
        if (node.path("properties").isObject()) {
            node.get("properties").fieldNames().forEachRemaining(words::add);
        }
        node.path("enum").forEach(word -> words.add(word.asText()));
        node.forEach(child -> collect(child, words));
    }
}
