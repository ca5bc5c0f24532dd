package understudy.pattern;

import java.util.Optional;
import understudy.refusal.Control;
import understudy.refusal.Refusals;

/** Finds an output of a pattern. */
public final class NamedOutput {

    private NamedOutput() {}

    /** The one of this name, or the first when none was named; empty when there is none of that name. */
    public static Optional<Output> find(Pattern pattern, String name, Refusals given) {
        if (name == null) {
            return Optional.of(pattern.outputs().get(0));
        }
        Optional<Output> named = pattern.outputs().stream().filter(one -> one.name().equals(name)).findFirst();
        if (named.isEmpty()) {
            given.add(Control.OUTPUTS, "the pattern has no output \"" + name + "\"",
                    "it has " + String.join(", ", pattern.outputs().stream().map(Output::name).toList()));
        }
        return named;
    }
}
