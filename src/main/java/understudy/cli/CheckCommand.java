package understudy.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.pattern.Pattern;
import understudy.text.Problem;
import understudy.text.Result;

/** Finds everything that is wrong with pattern files. */
@Command(
        name = "check",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Tells everything that is wrong with pattern files.",
        footer = {"", "Examples:", "  understudy check my-wheel.yaml", "  understudy check bench/*.yaml --json"})
final class CheckCommand implements Callable<Integer> {

    private final Surroundings surroundings;

    @Mixin
    private HelpOption help;

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Pattern files.")
    private List<String> files;

    @Option(names = "--json", description = "Prints JSON, for scripts.")
    private boolean json;

    CheckCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Patterns patterns = new Patterns();
        List<Object> report = new ArrayList<>();
        boolean fine = true;
        for (String file : files) {
            Result<Pattern> result = patterns.read(file);
            fine &= result.problems().isEmpty();
            report.add(Json.map("file", file, "problems", result.problems().stream().map(CheckCommand::json).toList()));
            if (!json) {
                result.problems().forEach(surroundings.out()::println);
                result.value().ifPresent(pattern -> surroundings.out().println(file + ": fine"));
            }
        }
        if (json) {
            surroundings.out().println(Json.text(report));
        }
        return fine ? Main.FINE : Main.BAD_INPUT;
    }

    private static Map<String, Object> json(Problem problem) {
        return Json.map(
                "line", problem.line(),
                "column", problem.column(),
                "wrong", problem.wrong(),
                "right", problem.right());
    }
}
