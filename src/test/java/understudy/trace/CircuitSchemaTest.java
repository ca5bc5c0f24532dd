package understudy.trace;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.CoreSchema;
import understudy.text.Source;

/** The published schema and the format's description say what the reader does. */
class CircuitSchemaTest {

    private static final Path FOLDER = Path.of("patterns/circuits");
    private static final ObjectMapper JSON = new ObjectMapper();

    /** What a schema can't say: the files that break only a rule of sizes, of order, or of what comes twice. */
    private static final Set<String> SEMANTIC = Set.of("begins-with-a-segment", "confidence-a-coin", "confidence-certain",
            "ends-with-a-segment", "name-of-point-and-segment", "names-twice", "nowhere-to-inject", "pin-upside-down",
            "two-points-together", "two-segments-together", "wrong-half-the-time");

    private static JsonSchema schema() throws IOException {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(JSON.readTree(FOLDER.resolve("circuit.schema.json").toFile()));
    }

    private static boolean accepts(JsonSchema schema, String text) {
        Object tree = new Load(LoadSettings.builder().setSchema(new CoreSchema()).build()).loadFromString(text);
        return schema.validate(JSON.valueToTree(tree)).isEmpty();
    }

    @Test
    void theSchemaAcceptsTheShippedCircuits() throws IOException {
        for (String id : CircuitLibrary.open().ids()) {
            assertThat(accepts(schema(), CircuitLibrary.open().source(id).value().orElseThrow().text())).as(id).isTrue();
        }
    }

    @Test
    void theSchemaRefusesTheBadFilesButForThoseThatOnlyAReaderCanJudge() throws IOException {
        Set<String> accepted = new TreeSet<>();
        for (Path file : CircuitReaderTest.bad()) {
            if (accepts(schema(), Files.readString(file))) {
                accepted.add(new Source(file.toString(), "").id());
            }
        }
        assertThat(accepted).isEqualTo(new TreeSet<>(SEMANTIC));
    }

    @Test
    void everyExampleOfTheDescriptionIsRead() throws IOException {
        Matcher example = Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL).matcher(readme());
        int examples = 0;
        for (; example.find(); examples++) {
            assertThat(CircuitReader.read(new Source("example.yaml", example.group(1))).problems()).isEmpty();
            assertThat(accepts(schema(), example.group(1))).isTrue();
        }
        assertThat(examples).isPositive();
    }

    @Test
    void everyKeyAndWordOfTheSchemaIsDescribed() throws IOException {
        Set<String> words = new TreeSet<>();
        collect(JSON.readTree(FOLDER.resolve("circuit.schema.json").toFile()), words);
        assertThat(words).contains("comes-and-goes", "axle-ratio", "engine speed");
        String readme = readme();
        assertThat(words.stream().filter(word -> !readme.contains("`" + word + "`"))).isEmpty();
    }

    private static String readme() throws IOException {
        return Files.readString(FOLDER.resolve("README.md"));
    }

    private static void collect(JsonNode node, Set<String> words) {
        if (node.path("properties").isObject()) {
            node.get("properties").fieldNames().forEachRemaining(words::add);
        }
        node.path("enum").forEach(word -> words.add(word.asText()));
        node.forEach(child -> collect(child, words));
    }
}
