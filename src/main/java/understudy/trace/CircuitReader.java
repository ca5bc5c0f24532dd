package understudy.trace;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.reading.Reading;
import understudy.reading.ReadingReader;
import understudy.text.Fields;
import understudy.text.Problems;
import understudy.refusal.Result;
import understudy.text.Source;
import understudy.text.Values;
import understudy.text.YamlText;
import understudy.refusal.Refused;

/**
 * Reads circuit files. Whatever is wrong comes back as problems with their places, all of them in one pass; nothing is
 * thrown for bad input. The format is described in patterns/circuits/README.md.
 */
public final class CircuitReader {
    private static final List<String> KEYS = List.of("title", "vehicle", "source", "pattern", "output", "speed", "input", "pin",
            "reading", "reference", "path", "odds", "wrongly-bad", "wrongly-good", "confidence", "comes-and-goes");
    private static final Map<String, Boolean> YES_OR_NO = yesOrNo();

    private static final int TITLE_LETTERS = 80;
    private static final int TEXT_LETTERS = 2000;
    private static final int INPUT_LETTERS = 300;

    private static final Range WRONG = new Range(0, 45, Unit.PERCENT);
    private static final Range CONFIDENCE = new Range(51, 99.9, Unit.PERCENT);
    private static final Range PIN = new Range(-60, 60, Unit.VOLT);

    /** Odds of the sensor's own side and of the module, beside those of segments: usual in the trade, not checked. */
    private static final double USUAL_SENSOR_ODDS = 2;
    private static final double USUAL_MODULE_ODDS = 1;
    /** How often a reading is wrong: a clip that slipped, a display read too early; usual, not checked. */
    private static final double USUAL_WRONG = 0.03;
    /** A fault that comes and goes may be away just then, though one moves what one can. */
    private static final double USUAL_MISSED = 0.15;
    private static final double USUAL_CONFIDENCE = 0.95;

    private final Source source;
    private final Problems problems;
    private final Values values;

    private CircuitReader(Source source) {
        this.source = source;
        this.problems = new Problems(source.fileName());
        this.values = new Values(problems);
    }

    /** Reads a file; the circuit's id is the file's name without folder and ending. */
    public static Result<Circuit> read(Source source) {
        CircuitReader reader = new CircuitReader(source);
        return Result.of(YamlText.tree(source.text(), reader.problems).flatMap(reader::circuit), reader.problems.inOrder());
    }

    /**
     * The same circuit file with another reading in it, everything else as it was written, but for remarks
     * right behind a reading of several lines.
     *
     * @param source of a circuit that can be read
     * @throws Refused where the reading stands elsewhere in the file, and is only referred to
     */
    public static Source expecting(Source source, Reading reading) {
        String text = source.text();
        MappingNode root = (MappingNode) YamlText.tree(text, new Problems(source.fileName())).orElseThrow();
        Node old = root.getValue().stream().filter(pair -> ((ScalarNode) pair.getKeyNode()).getValue().equals("reading"))
                .findFirst().orElseThrow().getValueNode();
        String after = rest(text, old.getEndMark().orElseThrow());
        String before = text.substring(0, text.length() - rest(text, old.getStartMark().orElseThrow()).length());
        // a mapping written line by line ends where the next key begins
        boolean lines = before.length() < text.length() - after.length() && text.charAt(text.length() - after.length() - 1) == '\n';
        Source changed = new Source(source.fileName(), before + reading.text() + (lines ? "\n" : "") + after);
        read(changed).value().filter(circuit -> circuit.reading().kind() == reading.kind()).orElseThrow(() -> new Refused(
                source.fileName() + ": its reading can't be replaced by the learned one", "write it out behind \"reading:\", without & and *"));
        return changed;
    }

    /** Marks count characters beyond the first 65 536 once, and leave a mark of byte order out. */
    private static String rest(String text, Mark mark) {
        int marked = text.startsWith("\ufeff") ? 1 : 0;
        return text.substring(text.offsetByCodePoints(marked, mark.getIndex()));
    }

    private Optional<Circuit> circuit(Node root) {
        Fields fields = new Fields(problems, root, "a circuit", KEYS);
        if (!fields.isMapping()) {
            return Optional.empty();
        }
        String title = fields.text("title", TITLE_LETTERS, "Speedometer signal, gearbox to module");
        Optional<String> vehicle = text(fields, "vehicle", TITLE_LETTERS);
        String origin = fields.text("source", TEXT_LETTERS, "where its numbers come from");
        String pattern = fields.text("pattern", TEXT_LETTERS, "output-shaft-17-vr");
        Optional<String> output = text(fields, "output", TITLE_LETTERS);
        Optional<String> speed = text(fields, "speed", TITLE_LETTERS);
        Optional<String> input = text(fields, "input", INPUT_LETTERS);
        Optional<Range> pin = fields.node("pin").flatMap(this::pin);
        Optional<Reading> reading = fields.required("reading", "{shows: vehicle speed, unit: km/h, pulses-per-km: 2485}")
                .flatMap(node -> ReadingReader.read(node, problems));
        Optional<String> reference = text(fields, "reference", TEXT_LETTERS);
        boolean comesAndGoes = fields.choice("comes-and-goes", YES_OR_NO, false);
        double wronglyBad = fields.quantity("wrongly-bad", WRONG, 100 * USUAL_WRONG) / 100;
        double wronglyGood = fields.quantity("wrongly-good", WRONG, 100 * (comesAndGoes ? USUAL_MISSED : USUAL_WRONG)) / 100;
        double confidence = fields.quantity("confidence", CONFIDENCE, 100 * USUAL_CONFIDENCE) / 100;
        double[] odds = fields.node("odds").map(this::odds).orElse(new double[] {USUAL_SENSOR_ODDS, USUAL_MODULE_ODDS});
        fields.required("path", "[{point: sensor connector, reach: 3 min}, {wire: floor loom}, {point: module pin, reach: 9 min}]");
        PathReader path = new PathReader(problems, YES_OR_NO);
        fields.node("path").ifPresent(path::read);
        if (!fields.clean()) {
            return Optional.empty();
        }
        return Optional.of(new Circuit(source.id(), title, vehicle, origin, pattern, output, speed, input, pin,
                reading.orElseThrow(), reference, path.points(), path.segments(), odds[0], odds[1], wronglyBad, wronglyGood,
                confidence, comesAndGoes));
    }

    private static Map<String, Boolean> yesOrNo() {
        Map<String, Boolean> words = new LinkedHashMap<>(); // in the order of being told
        words.put("yes", true);
        words.put("no", false);
        return words;
    }

    private Optional<String> text(Fields fields, String key, int mostLetters) {
        return fields.node(key).map(node -> values.text(node, mostLetters));
    }

    private Optional<Range> pin(Node node) {
        Fields fields = new Fields(problems, node, "the volts of a pin", List.of("from", "to"));
        double from = fields.quantity("from", PIN);
        double to = fields.quantity("to", PIN);
        if (fields.clean() && from > to) {
            fields.problem("from", "the lowest volts are above the highest", "swap them");
        }
        return fields.clean() ? Optional.of(new Range(from, to, Unit.VOLT)) : Optional.empty();
    }

    private double[] odds(Node node) {
        Fields fields = new Fields(problems, node, "the odds of sensor and module", List.of("sensor", "module"));
        return new double[] {
            fields.node("sensor").map(n -> PathReader.odds(n, values)).orElse(USUAL_SENSOR_ODDS),
            fields.node("module").map(n -> PathReader.odds(n, values)).orElse(USUAL_MODULE_ODDS)
        };
    }
}
