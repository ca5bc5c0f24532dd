package understudy.cli;

import java.util.Optional;
import understudy.pattern.Output;
import understudy.pattern.Pattern;

/** Finds an output of a pattern. */
final class Outputs {

    private Outputs() {}

    /** The one named by {@code --output}, or the first when none was named; empty when there is none of that name. */
    static Optional<Output> find(Pattern pattern, String name, Arguments given) {
        if (name == null) {
            return Optional.of(pattern.outputs().get(0));
        }
        Optional<Output> named = pattern.outputs().stream().filter(one -> one.name().equals(name)).findFirst();
        if (named.isEmpty()) {
            given.problem("--output", "the pattern has no output \"" + name + "\"",
                    "it has " + String.join(", ", pattern.outputs().stream().map(Output::name).toList()));
        }
        return named;
    }
}
