package understudy.cli.signal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.Pattern;
import understudy.plot.LinePlot;
import understudy.plot.PlotFile;
import understudy.plot.TerminalPlot;
import understudy.refusal.Refused;
import understudy.text.Json;
import understudy.text.Paragraph;
import understudy.view.OneCycle;
import understudy.view.PatternText;

/** Tells all about one pattern. */
@Command(
        name = "show",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Shows one pattern: its purpose, its events, how it looks.",
        footer = {
            "",
            "Examples:",
            "  understudy show crank-36-1-vr",
            "  understudy show crank-36-1-vr --speed \"200 rpm\" --plot crank.png",
            "  understudy show crank-36-1-vr --fault \"fault: missing tooth, tooth: 5\""
        })
public final class ShowCommand extends HouseCommand {

    private static final int DRAWN_ROWS = 4;

    @Parameters(paramLabel = "PATTERN", description = "A pattern, by name or file.")
    private String patternName;

    @Option(names = "--speed", paramLabel = "SPEED", description = "Speed, like \"800 rpm\" (default: the pattern's).")
    private String speed;

    @Option(
            names = "--fault",
            paramLabel = "FAULT",
            description = "A fault to draw: one of the pattern's by its name, or a new one. May be given again.")
    private List<String> faults = List.of();

    @Option(names = "--plot", paramLabel = "FILE", description = "Draws into this file (PNG or SVG by its ending).")
    private String plotFile;

    @Option(names = "--json", description = "Prints the facts as JSON, for scripts.")
    private boolean json;

    public ShowCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        Pattern pattern = given.withFaults(faults, new Patterns().find(patternName));
        double speedHz = given.speedHz(speed, pattern);
        Path file = given.picture("--plot", plotFile, List.of(".png", ".svg")).orElse(null);
        given.refuse();

        Optional<LinePlot> plot = OneCycle.plot(pattern, speedHz);
        if (file != null) {
            PlotFile.writeOrRefuse(plot.orElseThrow(() -> standsStill(pattern, speedHz)), file);
        }
        PatternText facts = new PatternText(pattern, speedHz, CommandWords.wording());
        if (json) {
            surroundings.out().println(Json.text(facts.json()));
            return ExitCode.FINE;
        }
        facts.lines().forEach(surroundings.out()::println);
        surroundings.out().println();
        if (file != null) {
            surroundings.out().println("drawn in " + file);
        } else {
            plot.ifPresent(drawing -> TerminalPlot.draw(drawing, Paragraph.width(), DRAWN_ROWS, surroundings.braille())
                    .forEach(surroundings.out()::println));
        }
        return ExitCode.FINE;
    }

    private static Refused standsStill(Pattern pattern, double speedHz) {
        return new Refused("--plot: at " + pattern.speed().print(speedHz) + " hardly anything moves", "give a higher --speed");
    }
}
