package understudy.reading;

import understudy.refusal.Location;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import understudy.quantity.Dimension;
import understudy.quantity.Quantity;
import understudy.refusal.Refused;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.text.Fields;
import understudy.text.Problems;
import understudy.refusal.Result;
import understudy.text.Values;
import understudy.text.YamlText;

/** Reads what a module shows, from what a file says under "reading:". */
public final class ReadingReader {

    private static final List<String> KEYS = List.of("shows", "unit", "teeth", "axle-ratio", "tyre", "rolls",
            "pulses-per-km", "pulses-per-mile", "events", "cylinders", "points", "scale", "offset", "tolerance", "step");
    /** For each kind the keys that tell its scale. */
    private static final Map<Reading.Kind, List<String>> OWN_KEYS = Map.of(
            Reading.Kind.WHEEL_SPEED, List.of("teeth", "tyre", "rolls"),
            Reading.Kind.VEHICLE_SPEED, List.of("teeth", "axle-ratio", "tyre", "rolls", "pulses-per-km", "pulses-per-mile"),
            Reading.Kind.ENGINE_SPEED, List.of("teeth", "events", "cylinders"),
            Reading.Kind.FREQUENCY, List.of(),
            Reading.Kind.TABLE, List.of("points"),
            Reading.Kind.LEARNED, List.of("scale", "offset"));
    private static final Map<Reading.Kind, Dimension> DIMENSIONS = Map.of(
            Reading.Kind.WHEEL_SPEED, Dimension.ROAD_SPEED,
            Reading.Kind.VEHICLE_SPEED, Dimension.ROAD_SPEED,
            Reading.Kind.ENGINE_SPEED, Dimension.TURNING,
            Reading.Kind.FREQUENCY, Dimension.FREQUENCY);
    private static final Map<String, Reading.Kind> KINDS = Arrays.stream(Reading.Kind.values()).collect(
            Collectors.toMap(Reading.Kind::words, kind -> kind, (a, b) -> a, LinkedHashMap::new));

    static final Range ROLLS = new Range(0.1, 20, Unit.METRE);
    static final Range FREQUENCY = new Range(0, 200_000, Unit.HERTZ);
    private static final Range PERCENT = new Range(0, 50, Unit.PERCENT);
    private static final int MOST_TEETH = 1000;
    private static final int MOST_POINTS = 200;
    private static final double MOST_PULSES = 1_000_000;
    private static final String PER_HZ = " per Hz";

    private final Fields fields;
    private final Problems problems;
    private final Values values;

    private ReadingReader(Node node, Problems problems) {
        this.fields = new Fields(problems, node, "a reading", KEYS);
        this.problems = problems;
        this.values = new Values(problems);
    }

    /** The reading that a mapping declares; empty, with what is wrong among the problems, where it can't be read. */
    public static Optional<Reading> read(Node node, Problems problems) {
        return new ReadingReader(node, problems).read();
    }

    /** The same from one line of text, with braces around the keys or without: "shows: engine speed, teeth: 36". */
    public static Result<Reading> read(String text, Location where) {
        String line = text.replaceAll("[\\n\\r\u0085\u2028\u2029]", " ").strip();
        boolean braces = line.startsWith("{");
        Problems problems = new Problems(where, column -> braces ? column : column - 1);
        return Result.of(YamlText.tree(braces ? line : "{" + line + "}", problems)
                .flatMap(node -> read(node, problems)), problems.inOrder());
    }

    private Optional<Reading> read() {
        Optional<Reading.Kind> kind = fields.required("shows", "wheel speed").flatMap(node -> values.choice(node, KINDS));
        Optional<DisplayUnit> unit = fields.required("unit", "km/h").flatMap(this::unit);
        if (kind.isEmpty() || unit.isEmpty()) {
            return Optional.empty();
        }
        List<String> own = OWN_KEYS.get(kind.get());
        fields.refuse("what shows " + kind.get().words(), OWN_KEYS.values().stream().flatMap(List::stream).distinct()
                .filter(key -> !own.contains(key)).toArray(String[]::new));
        Dimension dimension = DIMENSIONS.getOrDefault(kind.get(), unit.get().dimension());
        if (unit.get().dimension() != dimension) {
            fields.problem("unit", kind.get().words() + " is not shown in " + unit.get().symbol(), "write one of: "
                    + DisplayUnit.BY_SYMBOL.values().stream().filter(other -> other.dimension() == dimension)
                            .map(DisplayUnit::symbol).collect(Collectors.joining(", ")));
            return Optional.empty();
        }
        Optional<Scale> scale = scale(kind.get(), unit.get());
        Tolerance tolerance = fields.node("tolerance").map(node -> tolerance(node, unit.get()))
                .orElseGet(() -> scale.map(known -> Usual.tolerance(known, unit.get())).orElse(new Tolerance(0, 0)));
        double step = fields.node("step").map(node -> step(node, unit.get())).orElse(unit.get().usualStep());
        return fields.clean() && scale.isPresent()
                ? Optional.of(new Reading(kind.get(), unit.get(), scale.get(), tolerance, step)) : Optional.empty();
    }

    /** Never guesses which was meant: "kph" is nearer to mph than to km/h. */
    private Optional<DisplayUnit> unit(Node node) {
        String written = node instanceof ScalarNode scalar ? scalar.getValue() : "";
        Optional<DisplayUnit> unit = Optional.ofNullable(DisplayUnit.BY_SYMBOL.get(written));
        if (unit.isEmpty()) {
            problems.add(node, "\"" + written + "\" is no unit of a display",
                    "write one of: " + String.join(", ", DisplayUnit.BY_SYMBOL.keySet()));
        }
        return unit;
    }

    private Optional<Scale> scale(Reading.Kind kind, DisplayUnit unit) {
        return switch (kind) {
            case WHEEL_SPEED -> rolling(false);
            case VEHICLE_SPEED -> vehicle();
            case ENGINE_SPEED -> engine();
            case FREQUENCY -> Optional.of(new Scale.Line(1, 0));
            case TABLE -> fields.required("points", "{80 Hz: 20 kPa, 159 Hz: 101 kPa}").flatMap(node -> points(node, unit));
            case LEARNED -> line(unit);
        };
    }

    private Optional<Scale> vehicle() {
        String told = fields.oneOf("teeth", "pulses-per-km", "pulses-per-mile").orElse("");
        if (told.equals("teeth")) {
            return rolling(true);
        }
        if (told.isEmpty()) {
            return Optional.empty();
        }
        fields.refuse("\"" + told + "\"", "axle-ratio", "tyre", "rolls");
        double pulses = values.number(fields.place(told), 1, MOST_PULSES);
        if (!fields.clean()) {
            return Optional.empty();
        }
        return Optional.of(told.equals("pulses-per-km")
                ? new Scale.PulsesPerKm(pulses) : Scale.PulsesPerKm.ofMile(pulses));
    }

    private Optional<Scale> rolling(boolean behindAxle) {
        int teeth = fields.whole("teeth", 1, MOST_TEETH);
        double axleRatio = behindAxle
                ? fields.required("axle-ratio", "4.1").map(node -> values.number(node, 0.1, 100)).orElse(Double.NaN) : 1;
        String told = fields.oneOf("tyre", "rolls").orElse("");
        double rollsMetres = switch (told) {
            case "tyre" -> values.quantity(fields.place("tyre"), "a tyre's size like 205/55R16",
                    written -> TyreSize.parse(written).rollsMetres());
            case "rolls" -> fields.quantity("rolls", ROLLS);
            default -> Double.NaN;
        };
        return fields.clean() ? Optional.of(new Scale.Rolling(teeth, axleRatio, rollsMetres)) : Optional.empty();
    }

    private Optional<Scale> engine() {
        String told = fields.oneOf("teeth", "events", "cylinders").orElse("");
        double events = switch (told) {
            case "teeth" -> fields.whole("teeth", 1, MOST_TEETH);
            case "cylinders" -> fields.whole("cylinders", 1, 24) / 2.0;
            case "events" -> values.ratio(fields.place("events"));
            default -> Double.NaN;
        };
        if (events == 0 && fields.clean()) {
            fields.problem("events", "without events nothing can be counted", "write how many come in one turn of the crank");
        }
        return fields.clean() ? Optional.of(new Scale.EventsPerTurn(events)) : Optional.empty();
    }

    private Optional<Scale> points(Node node, DisplayUnit unit) {
        if (!(node instanceof MappingNode mapping)) {
            problems.add(node, "the points of a table are pairs of frequency and value, and there are none here",
                    "write pairs like \"80 Hz: 20 kPa\" below it, or within { }");
            return Optional.empty();
        }
        if (mapping.getValue().size() < 2 || mapping.getValue().size() > MOST_POINTS) {
            problems.add(node, "there are " + mapping.getValue().size() + " points", "allowed are 2 to " + MOST_POINTS);
            return Optional.empty();
        }
        List<Scale.Points.Point> points = new ArrayList<>();
        for (NodeTuple pair : mapping.getValue()) {
            double hz = values.quantity(pair.getKeyNode(), FREQUENCY);
            double base = unit.toBase(shown(pair.getValueNode(), unit, -unit.most()));
            if (points.size() > 0 && hz <= points.get(points.size() - 1).frequencyHz()) {
                problems.add(pair.getKeyNode(), "this frequency does not come after the one before it",
                        "list the points by rising frequency");
            } else if (!followsOn(points, base)) {
                problems.add(pair.getValueNode(), "the values turn round here, so that one value would have two frequencies",
                        "let them all rise, or all fall");
            }
            points.add(new Scale.Points.Point(hz, base));
        }
        return fields.clean() ? Optional.of(new Scale.Points(points)) : Optional.empty();
    }

    private static boolean followsOn(List<Scale.Points.Point> points, double base) {
        if (points.isEmpty()) {
            return true;
        }
        double change = base - points.get(points.size() - 1).base();
        double direction = points.size() == 1 ? change : points.get(1).base() - points.get(0).base();
        return Double.isNaN(change) || Double.isNaN(direction)
                || change != 0 && Math.signum(change) == Math.signum(direction);
    }

    private Optional<Scale> line(DisplayUnit unit) {
        double perHz = fields.required("scale", unit.exactly(0.16) + PER_HZ)
                .map(node -> values.quantity(node, "a scale like " + unit.exactly(0.16) + PER_HZ, written -> perHz(written, unit)))
                .orElse(Double.NaN);
        double offset = fields.node("offset").map(node -> shown(node, unit, -unit.most())).orElse(0.0);
        return fields.clean() ? Optional.of(new Scale.Line(unit.toBase(perHz), unit.toBase(offset))) : Optional.empty();
    }

    private static double perHz(String written, DisplayUnit unit) {
        if (!written.endsWith(PER_HZ)) {
            throw new Refused("\"" + written + "\" is no scale", "write one like " + unit.exactly(0.16) + PER_HZ);
        }
        double perHz = parse(written.substring(0, written.length() - PER_HZ.length()), unit, -unit.most());
        if (perHz == 0) {
            throw new Refused("a scale of 0 shows the same at every frequency", "write one like "
                    + unit.exactly(0.16) + PER_HZ);
        }
        return perHz;
    }

    private Tolerance tolerance(Node node, DisplayUnit unit) {
        double[] parts = new double[2];
        values.quantity(node, "a tolerance like 3 %", written -> {
            for (String part : written.split("\\+", 2)) {
                boolean percent = part.contains("%");
                parts[percent ? 0 : 1] += percent ? PERCENT.parse(part) : parse(part, unit, 0);
            }
            return 0;
        });
        return new Tolerance(parts[0], parts[1]);
    }

    private double step(Node node, DisplayUnit unit) {
        double step = shown(node, unit, 0);
        if (step == 0) {
            problems.add(node, "a display counts in steps above 0", "write a step like " + unit.exactly(unit.usualStep()));
        }
        return step == 0 ? Double.NaN : step;
    }

    private double shown(Node node, DisplayUnit unit, double least) {
        return values.quantity(node, "a value like " + unit.exactly(unit.usualStep()), written -> parse(written, unit, least));
    }

    /** In the display's unit, from any unit of its dimension. */
    static double parse(String written, DisplayUnit unit, double least) {
        double shown = unit.fromBase(Quantity.parse(written, unit.dimension()).base());
        if (!(shown >= least && shown <= unit.most())) {
            throw new Refused(written.strip() + " is out of range",
                    "allowed are " + unit.exactly(least) + " to " + unit.exactly(unit.most()));
        }
        return shown;
    }
}
