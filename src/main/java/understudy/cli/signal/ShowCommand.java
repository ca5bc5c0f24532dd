package understudy.cli.signal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.Pattern;
import understudy.plot.LinePlot;
import understudy.plot.PlotFile;
import understudy.refusal.Refused;
import understudy.view.OneCycle;
import understudy.view.PatternText;

/** Shows one pattern. */
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

    @Mixin
    private JsonOption json = new JsonOption();

    public ShowCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        Pattern pattern = given.withFaults(faults, new Patterns().find(patternName));
        double speedHz = given.speedHz(speed, pattern);
        Optional<Path> file = given.picture("--plot", plotFile, PlotFile.ENDINGS);
        given.refuse();

        Optional<LinePlot> plot = OneCycle.plot(pattern, speedHz);
        file.ifPresent(picture -> PlotFile.writeOrRefuse(plot.orElseThrow(() -> standsStill(pattern, speedHz)), picture));
        PatternText facts = new PatternText(pattern, speedHz, CommandWords.wording());
        json.print(surroundings, facts::json, () -> withDrawing(facts.lines(), plot, file));
        return ExitCode.FINE;
    }

    private static Refused standsStill(Pattern pattern, double speedHz) {
        return new Refused("--plot: at " + pattern.speed().print(speedHz) + " hardly anything moves", "give a higher --speed");
    }
}
