package understudy.bench;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.refusal.Control;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;

/** What is set for every output at once, "bench", or for one by its name, "cam=hall-box". */
public final class PerOutput {

    private static final java.util.regex.Pattern ONE =
            java.util.regex.Pattern.compile("([a-z0-9-]+)\\s*=\\s*(.+)", java.util.regex.Pattern.DOTALL);

    private final Map<String, String> named = new HashMap<>();
    private String all;
    private boolean understood = true;

    private PerOutput() {}

    public static PerOutput read(Control control, List<String> written, Pattern pattern, Refusals problems) {
        List<String> outputs = pattern.outputs().stream().map(Output::name).toList();
        PerOutput read = new PerOutput();
        for (String words : written) {
            Matcher one = ONE.matcher(words.strip());
            if (!one.matches()) {
                if (read.all != null) {
                    problems.add(control, "\"" + words + "\" is said of every output, and so was \"" + read.all + "\"",
                            Remedy.of("say of which output: ").set(control, outputs.get(0) + "=..."));
                }
                read.all = words.strip();
            } else if (!outputs.contains(one.group(1))) {
                problems.add(control, "the pattern has no output \"" + one.group(1) + "\"", "it has " + String.join(", ", outputs));
                read.understood = false;
            } else if (read.named.put(one.group(1), one.group(2).strip()) != null) {
                problems.add(control, "it is given twice for " + one.group(1), "leave one of them out");
            }
        }
        return read;
    }

    public Optional<String> of(Output output) {
        return Optional.ofNullable(named.getOrDefault(output.name(), all));
    }

    /** False when an output was named that there isn't: then what is missing may be what that was meant for. */
    boolean understood() {
        return understood;
    }

    /** Whether one output is set apart from the others. */
    boolean differs() {
        return !named.isEmpty();
    }

    boolean isEmpty() {
        return all == null && named.isEmpty();
    }

    /** The outputs that would play with these words: those of which rig and input are given, and this one. */
    public static List<Output> bothGiven(List<String> rigs, List<String> inputs, Pattern pattern, Output always) {
        Refusals unread = new Refusals(); // what is wrong is found again when the words are read
        PerOutput rigOf = read(Control.RIG, rigs, pattern, unread);
        PerOutput inputOf = read(Control.INPUT, inputs, pattern, unread);
        return pattern.outputs().stream()
                .filter(output -> output.equals(always) || rigOf.of(output).isPresent() && inputOf.of(output).isPresent()).toList();
    }
}
