package understudy.pattern;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.nodes.Node;
import understudy.quantity.Quantity;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.text.Fields;
import understudy.text.Problems;
import understudy.text.Values;

/** Reads one output: its name, its turning, and what it plays. */
final class OutputReader {
    private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9]*(-[a-z0-9]+)*");
    private static final Range SPAN = new Range(360, 720, Unit.DEGREE);

    private final Problems problems;
    private final Values values;
    private final Optional<Speed> speed;

    OutputReader(Problems problems, Optional<Speed> speed) {
        this.problems = problems;
        this.values = new Values(problems);
        this.speed = speed;
    }

    /** Reads one and puts it under its name, even if the rest can't be read. */
    void read(Node node, Map<String, Optional<Output>> outputs) {
        Fields fields = new Fields(problems, node, "an output",
                List.of("name", "ratio", "phase", "wheel", "hall", "reluctor", "tone", "bursts", "cycle"));
        if (!fields.isMapping()) {
            return;
        }
        String name = fields.text("name", FormatLimits.NAME_LETTERS, "crank");
        if (!name.isEmpty() && !NAME.matcher(name).matches()) {
            fields.problem("name", "\"" + name + "\" can't be the name of an output",
                    "use small letters a to z, digits and single hyphens, like front-left");
        }
        if (outputs.containsKey(name)) {
            fields.problem("name", "two outputs are named \"" + name + "\"", "give each a name of its own");
        }
        double ratio = fields.node("ratio").map(values::ratio).orElse(1.0);
        double phaseDeg = fields.quantity("phase", FormatLimits.PHASE, 0);
        Optional<Signal> signal = signal(fields);
        if (!name.isEmpty()) {
            outputs.putIfAbsent(name, fields.clean()
                    ? signal.map(s -> new Output(name, ratio, phaseDeg, s)) : Optional.empty());
        }
    }

    private Optional<Signal> signal(Fields fields) {
        String kind = fields.oneOf("wheel", "tone", "bursts", "cycle").orElse("");
        if (!kind.equals("wheel") && !kind.isEmpty()) {
            fields.refuse("a " + kind, "hall", "reluctor");
        }
        return switch (kind) {
            case "wheel" -> wheel(fields);
            case "tone" -> tone(fields.place("tone"));
            case "bursts" -> bursts(fields.place("bursts"));
            case "cycle" -> cycle(fields.place("cycle"));
            default -> Optional.empty();
        };
    }

    private Optional<Signal> wheel(Fields fields) {
        String kind = fields.oneOf("hall", "reluctor").orElse("");
        Optional<Wheel> wheel = new WheelReader(problems, kind.equals("reluctor")).read(fields.place("wheel"));
        Optional<? extends Sensor> sensor = switch (kind) {
            case "hall" -> hall(fields.place("hall"));
            case "reluctor" -> reluctor(fields.place("reluctor"));
            default -> Optional.empty();
        };
        return wheel.isPresent() && sensor.isPresent()
                ? Optional.of(new WheelSignal(wheel.get(), sensor.get())) : Optional.empty();
    }

    private Optional<Hall> hall(Node node) {
        Fields fields = new Fields(problems, node, "a Hall sensor", List.of("low", "high"));
        double low = fields.quantity("low", FormatLimits.VOLTS);
        double high = fields.quantity("high", FormatLimits.VOLTS);
        if (low >= high) {
            fields.problem("low", "low is not below high",
                    "swap them; where a sensor is low while a tooth passes, draw teeth in place of the gaps");
        }
        return fields.clean() ? Optional.of(new Hall(low, high)) : Optional.empty();
    }

    private Optional<Reluctor> reluctor(Node node) {
        Fields fields = new Fields(problems, node, "a reluctor",
                List.of("peak-to-peak", "at", "ceiling", "pole", "polarity"));
        double peakToPeak = fields.quantity("peak-to-peak", FormatLimits.PEAK_TO_PEAK);
        double atHz = fields.required("at", "200 rpm")
                .map(at -> SpeedReader.anyHz(at, speed, problems)).orElse(Double.NaN);
        double ceiling = fields.quantity("ceiling", FormatLimits.PEAK_TO_PEAK);
        double polePercent = fields.quantity("pole", FormatLimits.POLE);
        boolean reversed = fields.choice("polarity", words("normal", false, "reversed", true), false);
        if (ceiling < peakToPeak) {
            fields.problem("ceiling", "the ceiling is below the volts that are declared at a speed",
                    "raise \"ceiling\" or lower \"peak-to-peak\"");
        }
        boolean sound = fields.clean() && !Double.isNaN(atHz);
        return sound ? Optional.of(new Reluctor(peakToPeak, atHz, ceiling, polePercent / 100, reversed))
                : Optional.empty();
    }

    private Optional<Signal> tone(Node node) {
        Fields fields = new Fields(problems, node, "a tone",
                List.of("shape", "frequency", "cycles-per-turn", "peak-to-peak", "offset", "rising", "high"));
        fields.required("shape", "sine");
        Tone.Shape shape = fields.choice("shape", shapes(), Tone.Shape.SINE);
        fields.oneOf("frequency", "cycles-per-turn");
        double frequencyHz = fields.quantity("frequency", FormatLimits.FREQUENCY, Double.NaN);
        double cyclesPerTurn = fields.node("cycles-per-turn")
                .map(n -> values.number(n, 0.001, 1000)).orElse(Double.NaN);
        double peakToPeak = fields.quantity("peak-to-peak", FormatLimits.PEAK_TO_PEAK);
        double offset = fields.quantity("offset", FormatLimits.VOLTS, 0);
        double rising = fields.quantity("rising", FormatLimits.RISING, 50);
        double high = fields.quantity("high", FormatLimits.HIGH, 50);
        if (fields.has("shape") && fields.clean()) {
            String name = "a " + shape.name().toLowerCase(Locale.ROOT);
            if (shape != Tone.Shape.TRIANGLE) {
                fields.refuse(name, "rising");
            }
            if (shape != Tone.Shape.SQUARE) {
                fields.refuse(name, "high");
            }
        }
        double part = (shape == Tone.Shape.SQUARE ? high : rising) / 100;
        return fields.clean()
                ? Optional.of(new Tone(shape, frequencyHz, cyclesPerTurn, peakToPeak, offset, part)) : Optional.empty();
    }

    private static Map<String, Tone.Shape> shapes() {
        Map<String, Tone.Shape> shapes = new LinkedHashMap<>();
        shapes.put("sine", Tone.Shape.SINE);
        shapes.put("triangle", Tone.Shape.TRIANGLE);
        shapes.put("square", Tone.Shape.SQUARE);
        return shapes;
    }

    private Optional<Signal> bursts(Node node) {
        Fields fields = new Fields(problems, node, "a row of bursts",
                List.of("frequency", "decay", "peak", "noise", "over", "at"));
        double frequencyHz = fields.quantity("frequency", FormatLimits.FREQUENCY);
        double decaySeconds = fields.quantity("decay", FormatLimits.DECAY);
        double peak = fields.quantity("peak", FormatLimits.PEAK);
        double noise = fields.quantity("noise", FormatLimits.RMS, 0);
        double overDeg = span(fields);
        fields.required("at", "[15 deg, 195 deg]");
        List<Double> angles = new ArrayList<>();
        for (Node at : fields.list("at", 1, FormatLimits.MOST_POSITIONS)) {
            double angleDeg = values.quantity(at, FormatLimits.angle(overDeg));
            if (angleDeg >= overDeg) {
                problems.add(at, "this angle is where the next round begins", "write 0 deg for it, first in the list");
            } else if (!angles.isEmpty() && angleDeg <= angles.get(angles.size() - 1)) {
                problems.add(at, "this angle does not come after the one before it", "list the angles by rising size");
            }
            angles.add(angleDeg);
        }
        return fields.clean() ? Optional.of(new Bursts(frequencyHz, decaySeconds, peak, overDeg, angles, noise))
                : Optional.empty();
    }

    private Optional<Signal> cycle(Node node) {
        Fields fields = new Fields(problems, node, "a drawn cycle", List.of("over", "points"));
        double overDeg = span(fields);
        fields.required("points", "[[0 deg, 0 V], [180 deg, 1 V]]");
        List<DrawnCycle.Point> points = new ArrayList<>();
        for (Node item : fields.list("points", 2, FormatLimits.MOST_POINTS)) {
            List<Node> pair = Fields.list(problems, item, 2, 2);
            if (pair.isEmpty()) {
                continue;
            }
            double angleDeg = values.quantity(pair.get(0), FormatLimits.angle(overDeg));
            double volts = values.quantity(pair.get(1), FormatLimits.VOLTS);
            int last = points.size() - 1;
            if (last >= 0 && angleDeg < points.get(last).angleDeg()) {
                problems.add(pair.get(0), "this angle lies before the one above it", "list the points by rising angle");
            } else if (last >= 1 && angleDeg == points.get(last - 1).angleDeg()) {
                problems.add(pair.get(0), "this is the third point at one angle", "two points make a step; remove one");
            }
            points.add(new DrawnCycle.Point(angleDeg, volts));
        }
        return fields.clean() ? Optional.of(new DrawnCycle(overDeg, points)) : Optional.empty();
    }

    /** The degrees after which a wheel, bursts or a cycle repeat: one turn, or the two of a four-stroke cycle. */
    static double span(Fields fields) {
        double overDeg = fields.quantity("over", SPAN, 360);
        if (overDeg > 360 && overDeg < 720) {
            fields.problem("over", "a wheel or cycle can't be drawn over " + new Quantity(overDeg, Unit.DEGREE), "write 360 deg or 720 deg");
        }
        return overDeg == 720 ? 720 : 360;
    }

    static <T> Map<String, T> words(String one, T meaning, String other, T otherMeaning) {
        Map<String, T> words = new LinkedHashMap<>();
        words.put(one, meaning);
        words.put(other, otherMeaning);
        return words;
    }
}
