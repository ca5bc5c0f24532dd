package understudy.cli;

import understudy.refusal.Location;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.plot.LinePlot;
import understudy.plot.PlotFile;
import understudy.plot.TerminalPlot;
import understudy.refusal.Refused;
import understudy.preflight.Preflight;
import understudy.preflight.Setup;
import understudy.quantity.Unit;

/** Tells, before anything is clipped on, whether an input will decode a pattern from a rig. */
@Command(
        name = "preflight",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Tells over which speeds an input will decode, before you clip on.",
        footer = {
            "",
            "Examples:",
            "  understudy preflight my-wheel.yaml --rig bench --input reluctor-adaptive --fit",
            "  understudy preflight sine --rig bench --input resistive --plot margin.svg",
            "",
            "It is worked out on paper: nothing is played. Faults that are on act."
        })
final class PreflightCommand implements Callable<Integer> {

    private static final int DRAWN_ROWS = 4;

    private final Surroundings surroundings;

    @Mixin
    private HelpOption help;

    @Parameters(paramLabel = "PATTERN", description = "A pattern, by name or file.")
    private String patternName;

    @Option(names = "--rig", paramLabel = "NAME", required = true, description = "Your rig; must be given. OUTPUT=NAME, like"
            + " cam=hall-box, holds for that output alone, as with play.")
    private List<String> rigs;

    @Option(names = "--input", paramLabel = "INPUT", required = true, description = Inputs.HELP + " Must be given. OUTPUT=KIND,"
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

    @Option(names = "--plot", paramLabel = "FILE", description = "Draws into this file, ending in .png or .svg.")
    private String plotFile;

    @Option(names = "--json", description = "Prints the answer as JSON, for scripts.")
    private boolean json;

    PreflightCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        Pattern pattern = given.withFaults(faults, new Patterns().find(patternName));
        double speedHz = given.speedHz(speed, pattern);
        Optional<Output> output = Outputs.find(pattern, outputName, given);
        int rateHz = SignalOptions.rateHz(rate, given);
        Optional<Path> file = given.picture("--plot", plotFile, List.of(".png", ".svg"));
        Output judged = output.orElse(pattern.outputs().get(0));
        Benches benches = Benches.read(rigs, inputs, pattern, playedWith(judged, pattern), surroundings, given);
        Optional<Bench> bench = benches.of(judged);
        given.refuse();

        Setup setup = setup(pattern, output.orElseThrow(), bench.orElseThrow(), benches, rateHz, given);
        given.refuse();
        List<String> breaches = breaches(pattern, output.orElseThrow(), bench.orElseThrow());
        show(new PreflightReport(judge(setup, speedHz), bench.orElseThrow(), breaches), file);
        return Main.FINE;
    }

    /** The outputs that play with the same words would play: those of which rig and input are given. */
    private List<Output> playedWith(Output judged, Pattern pattern) {
        return pattern.outputs().stream()
                .filter(output -> output.equals(judged) || namesOne(rigs, output) && namesOne(inputs, output)).toList();
    }

    private static boolean namesOne(List<String> written, Output output) {
        return written.stream().anyMatch(words -> !words.contains("=") || words.strip().startsWith(output.name() + "="));
    }

    /** At the level at which play would play it: all outputs are scaled alike, by the one with the least room. */
    private Setup setup(Pattern pattern, Output output, Bench bench, Benches benches, int rateHz, Arguments given) {
        Setup asked = Setup.of(pattern, output, bench.circuit(), bench.input().input(), rateHz);
        Setup setup = fit ? asked.withLevel(SignalOptions.fittedLevel(pattern, playedWith(output, pattern), benches)) : asked;
        if (!setup.fits()) {
            given.problem(pattern.id(), "its output " + output.name() + " reaches "
                    + Amounts.print(setup.askedPinVolts(), Unit.VOLT) + bench.aroundItsMean() + ", more than the " + Amounts.print(setup.mostPinVolts(), Unit.VOLT) + " peak that "
                    + bench.gives(), "add --fit to have it scaled down");
        }
        return setup;
    }

    /** Why this rig will be refused when it is to play, if it will: on paper it may do what it likes. */
    private static List<String> breaches(Pattern pattern, Output output, Bench bench) {
        Arguments limits = new Arguments();
        bench.checkLimits(pattern, List.of(output), limits);
        try {
            limits.refuse();
            return List.of();
        } catch (Refused e) {
            return e.refusals().stream().map(CommandWords::text).toList();
        }
    }

    private Preflight judge(Setup setup, double speedHz) {
        try (Progress progress = new Progress(surroundings, "working out " + setup.pattern().id())) {
            return Preflight.of(setup, speedHz, progress::at);
        } catch (Refused e) {
            throw e.in(Location.named(setup.pattern().id()));
        }
    }

    private void show(PreflightReport report, Optional<Path> file) {
        LinePlot plot = report.plot();
        file.ifPresent(picture -> write(plot, picture));
        if (json) {
            surroundings.out().println(Json.text(report.json()));
            return;
        }
        report.lines().forEach(surroundings.out()::println);
        surroundings.out().println();
        if (file.isPresent()) {
            surroundings.out().println("drawn in " + file.get());
        } else {
            TerminalPlot.draw(plot, Paragraph.WIDTH, DRAWN_ROWS, surroundings.braille()).forEach(surroundings.out()::println);
        }
    }

    private static void write(LinePlot plot, Path file) {
        try {
            PlotFile.write(plot, file);
        } catch (IOException e) {
            throw Refused.setup(file.toString(), "the picture could not be written: " + e.getMessage(), "", e);
        }
    }
}
