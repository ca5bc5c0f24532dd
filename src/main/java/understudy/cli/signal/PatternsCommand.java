package understudy.cli.signal;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.Pattern;
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

    @Mixin
    private JsonOption json = new JsonOption();

    public PatternsCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        List<Pattern> patterns = new Patterns().shipped();
        json.print(surroundings, () -> patterns.stream().map(PatternText::listed).toList(), () -> lines(patterns));
        return ExitCode.FINE;
    }

    private static List<String> lines(List<Pattern> patterns) {
        Table table = new Table();
        patterns.forEach(pattern -> table.row(pattern.id(), pattern.title() + "; " + PatternText.range(pattern.speed())));
        List<String> lines = new ArrayList<>(table.lines());
        lines.addAll(List.of("", CommandWords.command("show " + patterns.get(0).id()) + " shows more about one of them."));
        return lines;
    }
}
