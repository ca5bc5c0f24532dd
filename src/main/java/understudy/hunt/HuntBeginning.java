package understudy.hunt;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.trace.Circuit;

/**
 * What has to be known of a job before it begins, asked one after the other. Immutable.
 *
 * @param circuit  the suspect
 * @param freeName a name that no job has yet
 * @param known    what is known already
 */
public record HuntBeginning(Circuit circuit, String freeName, Map<Item, String> known) {

    /** What is asked, in this order. */
    public enum Item {
        VEHICLE("Vehicle", "Which vehicle it is, as you would find it again: its name, plate or number."),
        COMPLAINT("Complaint", "What is wrong, in the customer's words or the module's code."),
        WHO("Who does the work", "The name that stands under the report."),
        NAME("Name of the job", "By this name you resume the job, and find its report.");

        private final String sentence;
        private final String why;

        Item(String sentence, String why) {
            this.sentence = sentence;
            this.why = why;
        }
    }

    public HuntBeginning {
        known = Map.copyOf(known);
    }

    /** What is asked now; empty when all is known. */
    public Optional<Item> next() {
        return Arrays.stream(Item.values()).filter(item -> !known.containsKey(item)).findFirst();
    }

    /** What is asked now; not when all is known. */
    public Question<String> question() {
        Item item = next().orElseThrow();
        String otherwise = switch (item) {
            case VEHICLE -> circuit.vehicle().orElse("");
            case NAME -> freeName;
            default -> "";
        };
        return new Question<>(item.sentence + (otherwise.isEmpty() ? "" : " (Enter: " + otherwise + ")") + ":", item.why,
                new Answers.Words(false, "kept with the job, and in its report"), Optional.of(otherwise));
    }

    public HuntBeginning after(String words) {
        Map<Item, String> more = new EnumMap<>(Item.class);
        more.putAll(known);
        more.put(next().orElseThrow(), words);
        return new HuntBeginning(circuit, freeName, more);
    }
}
