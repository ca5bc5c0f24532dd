package understudy.cli;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import understudy.pattern.Output;

/** An option that is said of every output, {@code --rig bench}, or of one by its name, {@code --rig cam=hall-box}. */
final class PerOutput {

    private static final Pattern ONE = Pattern.compile("([a-z0-9-]+)\\s*=\\s*(.+)", Pattern.DOTALL);

    private final Map<String, String> named = new HashMap<>();
    private String all;
    private boolean understood = true;

    private PerOutput() {}

    static PerOutput read(String option, List<String> written, List<String> outputs, Arguments given) {
        PerOutput read = new PerOutput();
        for (String words : written) {
            Matcher one = ONE.matcher(words.strip());
            if (!one.matches()) {
                if (read.all != null) {
                    given.problem(option, "\"" + words + "\" is said of every output, and so was \"" + read.all + "\"",
                            "say of which output: " + option + " " + outputs.get(0) + "=...");
                }
                read.all = words.strip();
            } else if (!outputs.contains(one.group(1))) {
                given.problem(option, "the pattern has no output \"" + one.group(1) + "\"", "it has " + String.join(", ", outputs));
                read.understood = false;
            } else if (read.named.put(one.group(1), one.group(2).strip()) != null) {
                given.problem(option, "it is given twice for " + one.group(1), "leave one of them out");
            }
        }
        return read;
    }

    Optional<String> of(Output output) {
        return Optional.ofNullable(named.getOrDefault(output.name(), all));
    }

    /** False when it was said of an output that there isn't: then what is missing may be what that was meant for. */
    boolean understood() {
        return understood;
    }

    boolean tellsApart() {
        return !named.isEmpty();
    }

    boolean isEmpty() {
        return all == null && named.isEmpty();
    }
}
