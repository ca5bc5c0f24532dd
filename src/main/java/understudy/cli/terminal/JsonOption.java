package understudy.cli.terminal;

import java.io.PrintWriter;
import java.util.List;
import java.util.function.Supplier;
import picocli.CommandLine.Option;
import understudy.text.Json;

/** The option that prints a result for scripts instead of for people. */
public final class JsonOption {

    @Option(names = "--json", description = "Prints JSON, for scripts.")
    private boolean json;

    /** Prints one of the two; the other is not even made. */
    public void print(Surroundings surroundings, Supplier<?> forScripts, Supplier<List<String>> forPeople) {
        (json ? List.of(Json.text(forScripts.get())) : forPeople.get()).forEach(surroundings.out()::println);
    }

    /** Where talk goes that must not stand in the result. */
    public PrintWriter talk(Surroundings surroundings) {
        return json ? surroundings.err() : surroundings.out();
    }
}
