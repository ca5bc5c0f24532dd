package understudy.text;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.Tag;
import org.snakeyaml.engine.v2.schema.CoreSchema;
import understudy.quantity.Dimension;
import understudy.refusal.Refused;
import understudy.quantity.Range;

/** Single values: text, words, whole numbers, ratios, quantities. What can't be read is a problem and a stand-in. */
public final class Values {
    private static final Pattern FRACTION =
            Pattern.compile("(\\d{1,9}(?:\\.\\d{1,9})?)\\s*/\\s*(\\d{1,9}(?:\\.\\d{1,9})?)");
    private static final double HIGHEST_RATIO = 1000;

    private final Problems problems;

    public Values(Problems problems) {
        this.problems = problems;
    }

    /** The letters of a text, or a problem where there is a number, a list, keys or nothing. */
    private Optional<String> string(Node node, String right) {
        if (!(node instanceof ScalarNode scalar)) {
            problems.add(node, "a single value is needed here", right);
            return Optional.empty();
        }
        if (scalar.getTag().equals(Tag.NULL)) {
            problems.add(node, "there is no value here", right);
            return Optional.empty();
        }
        if (!scalar.getTag().equals(Tag.STR)) {
            boolean number = scalar.getTag().equals(Tag.INT) || scalar.getTag().equals(Tag.FLOAT);
            problems.add(node, "\"" + scalar.getValue() + "\" " + (number ? "is only a number" : "is no text"), right);
            return Optional.empty();
        }
        return Optional.of(scalar.getValue());
    }

    public String text(Node node, int mostLetters) {
        String text = string(node, "write text, in quotes if it looks like a number").orElse("").strip();
        if (node instanceof ScalarNode scalar && scalar.getTag().equals(Tag.STR) && text.isEmpty()) {
            problems.add(node, "the text is empty", "write at least one word");
        }
        if (text.codePointCount(0, text.length()) > mostLetters) {
            problems.add(node, "the text is too long", "at most " + mostLetters + " letters fit");
        }
        return text;
    }

    public <T> Optional<T> choice(Node node, Map<String, T> words) {
        if (!(node instanceof ScalarNode scalar) || scalar.getTag().equals(Tag.NULL)) {
            problems.add(node, "a word is needed here", "write one of: " + String.join(", ", words.keySet()));
            return Optional.empty();
        }
        if (!scalar.getTag().equals(Tag.STR) || !words.containsKey(scalar.getValue())) {
            problems.add(node, "\"" + scalar.getValue() + "\" is not known",
                    Nearest.advice(scalar.getValue(), words.keySet()));
            return Optional.empty();
        }
        return Optional.of(words.get(scalar.getValue()));
    }

    public double quantity(Node node, Range range) {
        Dimension dimension = range.unit().dimension();
        return quantity(node, dimension.phrase() + " like " + dimension.example(), range::parse);
    }

    /** What {@code reader} makes of a text; NaN where it refuses. */
    public double quantity(Node node, String example, ToDoubleFunction<String> reader) {
        Optional<String> written = string(node, "write " + example);
        try {
            return written.isPresent() ? reader.applyAsDouble(written.get()) : Double.NaN;
        } catch (Refused e) {
            problems.add(node, e);
            return Double.NaN;
        }
    }

    /** A plain number as YAML's core schema writes it; a problem where it is none or out of range. */
    public double number(Node node, double from, double to) {
        String right = "write a number from " + plain(from) + " to " + plain(to) + ", without quotes and unit";
        boolean number = node.getTag().equals(Tag.INT) || node.getTag().equals(Tag.FLOAT);
        if (!(node instanceof ScalarNode scalar) || !number) {
            problems.add(node, "a plain number is needed here", right);
            return Double.NaN;
        }
        Object made = new CoreSchema().getSchemaTagConstructors().get(scalar.getTag()).construct(scalar);
        double value = ((Number) made).doubleValue();
        if (!(value >= from && value <= to)) {
            problems.add(node, "the number " + scalar.getValue() + " is out of range", right);
            return Double.NaN;
        }
        return value;
    }

    public int whole(Node node, int from, int to) {
        double value = number(node, from, to);
        if (value != Math.rint(value) && !Double.isNaN(value)) {
            problems.add(node, "the number " + ((ScalarNode) node).getValue() + " is not a whole one",
                    "write a whole number from " + from + " to " + to);
        }
        return (int) Math.rint(value);
    }

    /** "1", "0.5" or "17/44". */
    public double ratio(Node node) {
        if (!node.getTag().equals(Tag.STR)) {
            return number(node, 0, HIGHEST_RATIO);
        }
        String right = "write a number from 0 to " + plain(HIGHEST_RATIO) + ", or a fraction like 1/2";
        var fraction = FRACTION.matcher(string(node, right).orElse(""));
        double ratio = fraction.matches()
                ? Double.parseDouble(fraction.group(1)) / Double.parseDouble(fraction.group(2)) : Double.NaN;
        if (!(ratio >= 0 && ratio <= HIGHEST_RATIO)) {
            problems.add(node, "\"" + ((ScalarNode) node).getValue() + "\" is no ratio", right);
        }
        return ratio;
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
