package understudy.pattern;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.CoreSchema;
import understudy.refusal.Result;

/** The good and bad pattern files of the tests, and the schema's view of a file. */
final class Corpus {
    static final Path FOLDER = Path.of("src/test/resources/patterns");
    static final Path SHIPPED = Path.of("patterns");
    private static final ObjectMapper JSON = new ObjectMapper();

    private Corpus() {}

    static List<Path> files(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".yaml")).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<Path> good() {
        return files(FOLDER.resolve("good"));
    }

    static List<Path> bad() {
        return files(FOLDER.resolve("bad"));
    }

    static Result<Pattern> read(Path file) throws IOException {
        return PatternReader.read(file.getFileName().toString(), Files.readAllBytes(file));
    }

    static String name(Path file) {
        return new understudy.text.Source(file.toString(), "").id();
    }

    static JsonSchema schema() throws IOException {
        JsonNode json = JSON.readTree(SHIPPED.resolve("pattern.schema.json").toFile());
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(json);
    }

    /** What the schema finds wrong with a file that is YAML at all, read as an editor would (YAML 1.2, core schema). */
    static List<String> judge(JsonSchema schema, Path file) throws IOException {
        return judge(schema, Files.readString(file, StandardCharsets.UTF_8));
    }

    static List<String> judge(JsonSchema schema, String text) {
        LoadSettings settings =
                LoadSettings.builder().setSchema(new CoreSchema()).setAllowDuplicateKeys(true).build();
        Object tree = new Load(settings).loadFromString(text);
        return schema.validate(JSON.valueToTree(tree)).stream().map(Object::toString).toList();
    }
}
