package understudy.cli.signal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.bench.ChannelMap;
import understudy.bench.Hookups;
import understudy.bench.PerOutput;
import understudy.bench.SignalPlan;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Progress;
import understudy.cli.terminal.Surroundings;
import understudy.pattern.NamedOutput;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.plot.LinePlot;
import understudy.plot.PlotFile;
import understudy.preflight.Preflight;
import understudy.preflight.Setup;
import understudy.refusal.Location;
import understudy.refusal.Refusals;
import understudy.refusal.Refused;
import understudy.view.PreflightText;

/** Computes, before anything is clipped on, whether an input will decode a pattern from a rig. */
@Command(
        name = "preflight",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Computes at which speeds an input decodes, before you clip on.",
        footer = {
            "",
            "Examples:",
            "  understudy preflight my-wheel.yaml --rig bench --input reluctor-adaptive --fit",
            "  understudy preflight sine --rig bench --input resistive --plot margin.svg",
            "",
            "It is computed; nothing is played. Faults that are on act."
        })
public final class PreflightCommand extends HouseCommand {

    @Parameters(paramLabel = "PATTERN", description = "A pattern, by name or file.")
    private String patternName;

    @Option(names = "--rig", paramLabel = "NAME", required = true, description = "Your rig; must be given. OUTPUT=NAME, like"
            + " cam=hall-box, holds for that output alone, as with play.")
    private List<String> rigs;

    @Option(names = "--input", paramLabel = "INPUT", required = true, description = SignalOptions.INPUT_HELP + " Must be given. OUTPUT=KIND,"
            + " like cam=resistive, holds for that output alone, as with play.")
    private List<String> inputs;

    @Option(names = "--output", paramLabel = "NAME", description = "The pattern's output that goes there (default: its first).")
    private String outputName;

    @Option(names = "--speed", paramLabel = "SPEED", description = "The speed that matters most (default: the pattern's).")
    private String speed;

    @Option(names = "--rate", paramLabel = "RATE", description = "Samples a second, like 48000 or \"96 kHz\" (default: 48000).")
    private String rate;

    @Option(
            names = "--fault",
            paramLabel = "FAULT",
            description = "A fault of the pattern by its name, or a new one. May be given again.")
    private List<String> faults = List.of();

    @Option(names = "--fit", description = "Scales the output to 90 %% of what the rig can give.")
    private boolean fit;

    @Option(names = "--plot", paramLabel = "FILE", description = "Draws into this file (PNG or SVG by its ending).")
    private String plotFile;

    @Mixin
    private JsonOption json = new JsonOption();

    public PreflightCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        Pattern pattern = given.withFaults(faults, new Patterns().find(patternName));
        double speedHz = given.speedHz(speed, pattern);
        Optional<Output> output = NamedOutput.find(pattern, outputName, given);
        int rateHz = SignalOptions.rateHz(rate, given);
        Optional<Path> file = given.picture("--plot", plotFile, PlotFile.ENDINGS);
        Output judged = output.orElse(pattern.outputs().get(0));
        List<Output> played = PerOutput.bothGiven(rigs, inputs, pattern, judged);
        Hookups hookups = SignalOptions.hookups(rigs, inputs, pattern, played, surroundings, given);
        given.refuse();

        SignalPlan plan = SignalPlan.of(pattern, speedHz, rateHz, ChannelMap.only(played, pattern), hookups, fit);
        plan.checkLevel(given);
        given.refuse();
        Refusals breaches = new Refusals();
        plan.checkLimits(breaches);
        show(new PreflightText(judge(plan.setup(judged), speedHz), hookups.of(judged).orElseThrow(), breaches.list(), CommandWords.wording()), file);
        return ExitCode.FINE;
    }

    private Preflight judge(Setup setup, double speedHz) {
        try (Progress progress = new Progress(surroundings, "computing " + setup.pattern().id())) {
            return Preflight.of(setup, speedHz, progress::at);
        } catch (Refused e) {
            throw e.in(Location.named(setup.pattern().id()));
        }
    }

    private void show(PreflightText report, Optional<Path> file) {
        LinePlot plot = report.plot();
        file.ifPresent(picture -> PlotFile.writeOrRefuse(plot, picture));
        json.print(surroundings, report::json, () -> withDrawing(report.lines(), Optional.of(plot), file));
    }
}
