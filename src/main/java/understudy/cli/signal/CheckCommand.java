package understudy.cli.signal;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.PatternLibrary;
import understudy.pattern.PatternReader;
import understudy.refusal.Result;
import understudy.text.Json;
import understudy.text.Source;
import understudy.trace.CircuitFiles;
import understudy.trace.CircuitLibrary;
import understudy.trace.CircuitReader;
import understudy.view.CheckedFile;

/** Finds everything that is wrong with pattern and circuit files. */
@Command(
        name = "check",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists everything that is wrong with pattern and circuit files.",
        footer = {"", "Examples:", "  understudy check my-wheel.yaml", "  understudy check bench/*.yaml --json"})
public final class CheckCommand extends HouseCommand {

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "Pattern and circuit files.")
    private List<String> files;

    @Option(names = "--json", description = "Prints JSON, for scripts.")
    private boolean json;

    public CheckCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        List<CheckedFile> report = new ArrayList<>();
        boolean allFine = true;
        for (String file : files) {
            Result<?> result = read(file);
            allFine &= result.problems().isEmpty();
            report.add(CheckedFile.of(file, result.problems()));
            if (!json) {
                result.problems().forEach(surroundings.out()::println);
                result.value().ifPresent(fine -> surroundings.out().println(file + ": fine"));
            }
        }
        if (json) {
            surroundings.out().println(Json.text(report));
        }
        return allFine ? ExitCode.FINE : ExitCode.BAD_INPUT;
    }

    /** A circuit is known by its path; whatever has none is read as a pattern. */
    private static Result<?> read(String file) {
        Result<Source> source = PatternLibrary.open().source(file);
        if (source.value().isEmpty()) {
            Result<Source> circuit = CircuitLibrary.open().source(file);
            return circuit.value().isPresent() ? CircuitReader.read(circuit.value().get()) : source;
        }
        return CircuitFiles.is(source.value().get())
                ? CircuitReader.read(source.value().get()) : PatternReader.read(source.value().get());
    }
}
