package understudy.text;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import understudy.quantity.Range;

/**
 * The keys and values of one mapping. Unknown and doubled keys are problems at once; a value that can't be read is a
 * problem and gives a stand-in (NaN, 0, empty), so whoever builds something asks {@link #clean} first.
 */
public final class Fields {
    /** What follows "when:" has commas of its own; without quotes its pieces look like keys. */
    private static final Pattern PIECE_OF_WHEN = Pattern.compile("always|(from|until|every)\\s.*|.*%\\s*of turns");

    private final Problems problems;
    private final Values values;
    private final Node node;
    private final String what;
    private final int problemsBefore;
    private final Map<String, Node> nodes = new LinkedHashMap<>();
    private final Set<String> mistyped = new HashSet<>();

    /**
     * @param what what the mapping describes, with its article: "a wheel"
     * @param keys all that are known here
     */
    public Fields(Problems problems, Node node, String what, List<String> keys) {
        this.problems = problems;
        this.values = new Values(problems);
        this.node = node;
        this.what = what;
        this.problemsBefore = problems.count();
        if (!(node instanceof MappingNode mapping)) {
            problems.add(node, what + " is described by keys, and there are none here",
                    "write keys like \"" + keys.get(0) + ": ...\" below it, or within { }");
            return;
        }
        for (NodeTuple tuple : mapping.getValue()) {
            if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
                problems.add(tuple.getKeyNode(), "a key must be a single word", "known here: " + String.join(", ", keys));
            } else if (!keys.contains(key.getValue())) {
                problems.add(key, "\"" + key.getValue() + "\" is not a key of " + what, unknown(key.getValue(), keys));
                Nearest.to(key.getValue(), keys).stream().limit(1).forEach(mistyped::add);
            } else if (nodes.putIfAbsent(key.getValue(), tuple.getValueNode()) != null) {
                problems.add(key, "\"" + key.getValue() + "\" is here twice", "keep one of them");
            }
        }
    }

    private static String unknown(String key, List<String> keys) {
        boolean pieceOfWhen = keys.contains("when") && PIECE_OF_WHEN.matcher(key).matches();
        return pieceOfWhen ? "put all that follows \"when:\" in quotes" : Nearest.advice(key, keys);
    }

    /** Whether no problem has turned up since these fields were opened, whatever was read in between. */
    public boolean clean() {
        return problems.count() == problemsBefore;
    }

    public boolean isMapping() {
        return node instanceof MappingNode;
    }

    public boolean has(String key) {
        return nodes.containsKey(key);
    }

    public Optional<Node> node(String key) {
        return Optional.ofNullable(nodes.get(key));
    }

    /** The value's node, or the mapping's where there is none: a place for a problem. */
    public Node place(String key) {
        return nodes.getOrDefault(key, node);
    }

    public void problem(String key, String wrong, String right) {
        problems.add(place(key), wrong, right);
    }

    public Optional<Node> required(String key, String example) {
        if (!has(key) && isMapping() && !mistyped.contains(key)) {
            problems.add(node, what + " needs \"" + key + "\"", "add \"" + key + ": " + example + "\"");
        }
        return node(key);
    }

    /** Which one of the keys is there; a problem if it is none or several. */
    public Optional<String> oneOf(String... keys) {
        List<String> present = List.of(keys).stream().filter(this::has).toList();
        if (present.size() == 1 || !isMapping()) {
            return present.stream().findFirst();
        }
        String choice = String.join(", ", keys);
        if (present.isEmpty()) {
            problems.add(node, what + " lacks one of its keys", "add one of: " + choice);
        } else {
            problem(present.get(1), what + " has both \"" + present.get(0) + "\" and \"" + present.get(1) + "\"",
                    "keep only one of: " + choice);
        }
        return Optional.empty();
    }

    /** Keys that go only with another one. */
    public void refuse(String reason, String... keys) {
        for (String key : keys) {
            if (has(key)) {
                problem(key, "\"" + key + "\" does not go with " + reason, "remove it");
            }
        }
    }

    public String text(String key, int mostLetters, String example) {
        return required(key, example).map(n -> values.text(n, mostLetters)).orElse("");
    }

    public double quantity(String key, Range range) {
        return required(key, example(range)).map(n -> values.quantity(n, range)).orElse(Double.NaN);
    }

    public double quantity(String key, Range range, double otherwise) {
        return node(key).map(n -> values.quantity(n, range)).orElse(otherwise);
    }

    private static String example(Range range) {
        return range.unit().dimension().example();
    }

    public int whole(String key, int from, int to) {
        return required(key, Integer.toString(Math.max(from, 1))).map(n -> values.whole(n, from, to)).orElse(0);
    }

    public int whole(String key, int from, int to, int otherwise) {
        return node(key).map(n -> values.whole(n, from, to)).orElse(otherwise);
    }

    /** The value that the word stands for, {@code otherwise} where there is none. */
    public <T> T choice(String key, Map<String, T> words, T otherwise) {
        return node(key).flatMap(n -> values.choice(n, words)).orElse(otherwise);
    }

    public List<Node> list(String key, int least, int most) {
        return node(key).map(n -> list(problems, n, least, most)).orElse(List.of());
    }

    public static List<Node> list(Problems problems, Node node, int least, int most) {
        if (!(node instanceof SequenceNode sequence)) {
            problems.add(node, "a list is needed here", "write items within [ ], or each on a line of its own after a dash");
            return List.of();
        }
        List<Node> items = new ArrayList<>(sequence.getValue());
        if (items.size() < least || items.size() > most) {
            problems.add(node, "a list of " + items.size() + " is " + (items.size() < least ? "too short" : "too long"),
                    least == most ? "write " + least + " items" : "allowed are " + least + " to " + most + " items");
            return List.of();
        }
        return items;
    }
}
