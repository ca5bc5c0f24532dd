package understudy.cli;

import java.util.List;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import understudy.pattern.Hazard;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Speed;
import understudy.text.Json;

/** Lists the shipped patterns. */
@Command(
        name = "patterns",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists the patterns that come with Understudy.",
        footer = {"", "Examples:", "  understudy patterns", "  understudy patterns --json"})
final class PatternsCommand extends HouseCommand {

    @Option(names = "--json", description = "Prints JSON, for scripts.")
    private boolean json;

    PatternsCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        List<Pattern> patterns = new Patterns().shipped();
        if (json) {
            surroundings.out().println(Json.text(patterns.stream().map(PatternsCommand::json).toList()));
            return Main.FINE;
        }
        int idWidth = patterns.stream().mapToInt(pattern -> pattern.id().length()).max().orElse(0);
        int titleWidth = patterns.stream().mapToInt(pattern -> pattern.title().length()).max().orElse(0);
        for (Pattern pattern : patterns) {
            surroundings.out().println(padded(pattern.id(), idWidth) + "  " + padded(pattern.title(), titleWidth) + "  "
                    + range(pattern.speed()));
        }
        surroundings.out().println();
        surroundings.out().println("'understudy show " + patterns.get(0).id() + "' tells more about one of them.");
        return Main.FINE;
    }

    static String range(Speed speed) {
        return speed.print(speed.fromHz()) + " to " + speed.print(speed.toHz());
    }

    /** What a script needs to choose a pattern and a speed. */
    static Map<String, Object> json(Pattern pattern) {
        Speed speed = pattern.speed();
        return Json.map(
                "id", pattern.id(),
                "title", pattern.title(),
                "speed", Json.map(
                        "unit", speed.unit().symbol(),
                        "default", Json.number(speed.inUnit(speed.defaultHz())),
                        "from", Json.number(speed.inUnit(speed.fromHz())),
                        "to", Json.number(speed.inUnit(speed.toHz()))),
                "outputs", pattern.outputs().stream().map(Output::name).toList(),
                "hazards", pattern.hazards().stream().map(Hazard::key).toList());
    }

    static String padded(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }
}
