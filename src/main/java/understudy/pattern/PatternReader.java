package understudy.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.Node;
import understudy.refusal.Result;
import understudy.text.Fields;
import understudy.text.Problems;
import understudy.text.Source;
import understudy.text.TextFile;
import understudy.text.Values;
import understudy.text.YamlText;

/**
 * Reads what people write: pattern files, and the faults and profiles of a command line. Whatever is wrong comes back
 * as problems with their places, all of them in one pass; nothing is thrown for bad input. The format is described in
 * patterns/README.md.
 */
public final class PatternReader {
    private static final List<String> KEYS = List.of(
            "title", "purpose", "source", "hazards", "cautions", "seed", "speed", "outputs", "profile", "faults");
    private static final Map<String, Hazard> HAZARDS = hazards();

    private PatternReader() {}

    /** Reads a file's bytes, which must be UTF-8 text. */
    public static Result<Pattern> read(String fileName, byte[] bytes) {
        Problems problems = new Problems(fileName);
        return Result.of(TextFile.decode(bytes, problems)
                .flatMap(text -> YamlText.tree(text, problems))
                .flatMap(root -> pattern(fileName, root, problems)), problems.inOrder());
    }

    public static Result<Pattern> read(Source source) {
        return read(source.fileName(), source.text());
    }

    /** Reads a file's text; the pattern's id is the file's name without folder and ending. */
    public static Result<Pattern> read(String fileName, String text) {
        Problems problems = new Problems(fileName);
        return Result.of(YamlText.tree(text, problems).flatMap(root -> pattern(fileName, root, problems)), problems.inOrder());
    }

    /**
     * Reads a fault from a command line: the name of one that the pattern declares, which comes back switched on, or a
     * new one in the words of a pattern file, "fault: weak tooth, tooth: 5, strength: 40 %". Put it into the pattern
     * with {@link Pattern#withFault}.
     */
    public static Result<Fault> readFault(String text, Pattern pattern) {
        return CommandLineText.fault(text, pattern);
    }

    /**
     * Reads a profile from a command line: the name of a file that holds a list of steps, or the steps themselves,
     * "ramp: 6000 rpm, from: 500 rpm, for: 5 s; hold: 6000 rpm, for: 2 s; follow".
     */
    public static Result<Profile> readProfile(String textOrFile, Speed speed) {
        return CommandLineText.profile(textOrFile, speed);
    }

    private static Optional<Pattern> pattern(String fileName, Node root, Problems problems) {
        Fields fields = new Fields(problems, root, "a pattern", KEYS);
        if (!fields.isMapping()) {
            return Optional.empty();
        }
        String title = fields.text("title", FormatLimits.TITLE_LETTERS, "Crank wheel 60-2, Hall");
        if (title.contains("\n")) {
            fields.problem("title", "the title has more than one line", "keep it to one line");
        }
        String purpose = fields.text("purpose", FormatLimits.TEXT_LETTERS, "what it is for");
        String source = fields.text("source", FormatLimits.TEXT_LETTERS, "where its numbers come from");
        Values values = new Values(problems);
        List<Hazard> hazards = fields.list("hazards", 0, HAZARDS.size()).stream()
                .flatMap(node -> values.choice(node, HAZARDS).stream()).toList();
        List<String> cautions = fields.list("cautions", 0, 20).stream()
                .map(node -> values.text(node, FormatLimits.TEXT_LETTERS)).toList();
        int seed = fields.whole("seed", 0, Integer.MAX_VALUE, 1);
        Optional<Speed> speed = fields.required("speed", "{default: 800 rpm, from: 30 rpm, to: 8000 rpm}")
                .flatMap(node -> SpeedReader.read(node, problems));
        Map<String, Optional<Output>> outputs = outputs(fields, speed, problems);
        Optional<Profile> profile = fields.node("profile")
                .flatMap(node -> new ProfileReader(problems, speed).read(node));
        List<Fault> faults = faults(fields, outputs, problems);
        if (!fields.clean()) {
            return Optional.empty();
        }
        return Optional.of(new Pattern(new Source(fileName, "").id(), title, purpose, source, hazards, cautions, speed.orElseThrow(),
                outputs.values().stream().map(Optional::orElseThrow).toList(), profile, faults, seed));
    }

    /** By name, in channel order; empty where the name is known but the rest can't be read. */
    private static Map<String, Optional<Output>> outputs(Fields fields, Optional<Speed> speed, Problems problems) {
        fields.required("outputs", "[{name: tone, tone: {shape: sine, frequency: 1 kHz, peak-to-peak: 2 V}}]");
        OutputReader reader = new OutputReader(problems, speed);
        Map<String, Optional<Output>> outputs = new LinkedHashMap<>();
        for (Node node : fields.list("outputs", 1, FormatLimits.MOST_OUTPUTS)) {
            reader.read(node, outputs);
        }
        return outputs;
    }

    private static List<Fault> faults(Fields fields, Map<String, Optional<Output>> outputs, Problems problems) {
        FaultReader reader = new FaultReader(problems, outputs);
        List<Fault> faults = new ArrayList<>();
        for (Node node : fields.list("faults", 0, FormatLimits.MOST_FAULTS)) {
            reader.read(node).ifPresent(faults::add);
        }
        return faults;
    }

    private static Map<String, Hazard> hazards() {
        Map<String, Hazard> byKey = new LinkedHashMap<>();
        for (Hazard hazard : Hazard.named()) {
            byKey.put(hazard.key(), hazard);
        }
        return byKey;
    }
}
