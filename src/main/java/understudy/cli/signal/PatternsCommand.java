package understudy.cli.signal;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.Pattern;
import understudy.text.Json;
import understudy.text.Table;
import understudy.view.PatternText;

/** Lists the shipped patterns. */
@Command(
        name = "patterns",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists the patterns that come with Understudy.",
        footer = {"", "Examples:", "  understudy patterns", "  understudy patterns --json"})
public final class PatternsCommand extends HouseCommand {

    @Option(names = "--json", description = "Prints JSON, for scripts.")
    private boolean json;

    public PatternsCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        List<Pattern> patterns = new Patterns().shipped();
        if (json) {
            surroundings.out().println(Json.text(patterns.stream().map(PatternText::listed).toList()));
            return ExitCode.FINE;
        }
        Table table = new Table();
        patterns.forEach(pattern -> table.row(pattern.id(), pattern.title() + "; " + PatternText.range(pattern.speed())));
        table.lines().forEach(surroundings.out()::println);
        surroundings.out().println();
        surroundings.out().println(CommandWords.command("show " + patterns.get(0).id()) + " shows more about one of them.");
        return ExitCode.FINE;
    }
}
