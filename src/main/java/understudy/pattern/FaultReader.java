package understudy.pattern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import understudy.text.Fields;
import understudy.text.Problems;
import understudy.text.Values;

/** Reads faults, and judges whether each makes sense on its output. */
final class FaultReader {
    private static final List<String> COMMON = List.of("fault", "output", "name", "when", "switched");
    private static final Pattern NAME = Pattern.compile("[^:;,{}\\[\\]\\p{Cntrl}]+");

    private final Problems problems;
    private final Map<String, Optional<Output>> outputs;
    private final Set<String> names = new LinkedHashSet<>();

    /** @param outputs by name; empty where an output's name is known but the rest can't be read */
    FaultReader(Problems problems, Map<String, Optional<Output>> outputs) {
        this.problems = problems;
        this.outputs = outputs;
    }

    /** The kinds of fault as a file names them, each with the keys of its own and the way to read them. */
    private enum Kind {
        MISSING_TOOTH("missing tooth", ToothFaults::missing, "tooth"),
        WEAK_TOOTH("weak tooth", ToothFaults::weak, "tooth", "strength"),
        DISPLACED_TOOTH("displaced tooth", ToothFaults::displaced, "tooth", "by"),
        RUN_OUT("run-out", ToothFaults::runOut, "amplitude", "timing", "at"),
        DROPOUT("dropout", SignalFaults::dropout, "length", "at"),
        FLICKER("flicker", SignalFaults::flicker, "rate", "length"),
        NOISE("noise", SignalFaults::noise, "rms"),
        HUM("hum", SignalFaults::hum, "rms", "frequency"),
        SPIKES("spikes", SignalFaults::spikes, "peak", "length", "at"),
        SWAPPED_POLARITY("swapped polarity", SignalFaults::swapped),
        LEVEL("level", SignalFaults::level, "strength"),
        SHIFT("shift", ToothFaults::shift, "by", "teeth");

        private final String word;
        private final BiFunction<FaultFields, Fault.Place, Fault> reader;
        private final List<String> keys;

        Kind(String word, BiFunction<FaultFields, Fault.Place, Fault> reader, String... keys) {
            this.word = word;
            this.reader = reader;
            this.keys = new ArrayList<>(COMMON);
            this.keys.addAll(Arrays.asList(keys));
        }
    }

    private static final Map<String, Kind> KINDS = kinds();

    private static Map<String, Kind> kinds() {
        Map<String, Kind> kinds = new LinkedHashMap<>();
        for (Kind kind : Kind.values()) {
            kinds.put(kind.word, kind);
        }
        return kinds;
    }

    Optional<Fault> read(Node node) {
        return read(node, false);
    }

    /** @param numbered whether a name left out gets a number where its kind has been used as a name before */
    Optional<Fault> read(Node node, boolean numbered) {
        Optional<Kind> kind = kind(node);
        if (kind.isEmpty()) {
            return Optional.empty();
        }
        Fields fields = new Fields(problems, node, "the fault \"" + kind.get().word + "\"", kind.get().keys);
        Optional<Output> output = output(fields);
        String name = name(fields, kind.get().word, numbered);
        When when = fields.node("when").flatMap(n -> new WhenReader(problems).read(n)).orElse(When.ALWAYS);
        boolean on = fields.choice("switched", OutputReader.words("on", true, "off", false), true);
        Fault.Place place = new Fault.Place(name, output.map(Output::name).orElse(""), when, on);
        Fault fault = kind.get().reader.apply(new FaultFields(fields, output, problems), place);
        return fields.clean() && output.isPresent() ? Optional.of(fault) : Optional.empty();
    }

    /** A name that is taken, so that later faults can't have it. */
    void taken(String name) {
        names.add(name);
    }

    private Optional<Kind> kind(Node node) {
        if (node instanceof MappingNode mapping) {
            for (NodeTuple tuple : mapping.getValue()) {
                if (tuple.getKeyNode() instanceof ScalarNode key && key.getValue().equals("fault")) {
                    return new Values(problems).choice(tuple.getValueNode(), KINDS);
                }
            }
        }
        problems.add(node, "this does not say which fault it is",
                "begin with one of: " + String.join(", ", KINDS.keySet().stream().map(k -> "fault: " + k).toList()));
        return Optional.empty();
    }

    private Optional<Output> output(Fields fields) {
        if (fields.has("output")) {
            return new Values(problems).choice(fields.place("output"), outputs).flatMap(output -> output);
        }
        if (outputs.size() > 1) {
            fields.required("output", outputs.keySet().iterator().next());
            return Optional.empty();
        }
        return outputs.values().stream().findFirst().flatMap(output -> output);
    }

    private String name(Fields fields, String kind, boolean numbered) {
        String name = fields.has("name") ? fields.text("name", FormatLimits.NAME_LETTERS, kind) : kind;
        for (int i = 2; numbered && !fields.has("name") && names.contains(name); i++) {
            name = kind + " " + i;
        }
        if (!name.isEmpty() && !NAME.matcher(name).matches()) {
            fields.problem("name", "a fault can't be named \"" + name + "\"",
                    "leave out colons, semicolons, commas and brackets, so that a command line can name it");
        }
        if (!names.add(name)) {
            fields.problem("name", "two faults are named \"" + name + "\"",
                    "give each a name of its own: \"name: second " + kind + "\"");
        }
        return name;
    }
}
