package understudy.cli.rig;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import understudy.cli.signal.SignalOptions;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Surroundings;
import understudy.plot.WiringDrawing;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.rig.Assessment;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.CurrentLimits;
import understudy.rig.Divider;
import understudy.rig.DividerSearch;
import understudy.rig.Lead;
import understudy.rig.NamedInput;
import understudy.rig.Preferred;
import understudy.rig.Rig;
import understudy.rig.Use;
import understudy.store.NamedRig;
import understudy.store.Store;
import understudy.view.DividerText;

/** Chooses the parts of the box, or judges those that are there. */
@Command(
        name = "divider",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Chooses the resistors of the box, within the limits; draws it.",
        footer = {
            "",
            "Examples:",
            "  understudy divider --input reluctor-adaptive",
            "  understudy divider --rig bench --input \"pulled-up-5-v, pull-up: 15k\" --save",
            "  understudy divider --input reluctor-adaptive --series \"18k\" --shunt \"4k7\"",
            "  understudy divider --input reluctor-biased-pair --drawing box.svg",
            "",
            "With --series it chooses nothing and judges that build instead."
        })
public final class DividerCommand extends HouseCommand {

    private static final Map<String, Preferred> VALUES =
            Map.of("E12", Preferred.E12, "E24", Preferred.E24, "E96", Preferred.E96);

    @Option(names = "--input", paramLabel = "KIND", required = true, description = SignalOptions.INPUT_HELP)
    private String input;

    @Option(names = "--rig", paramLabel = "NAME", description = "A rig whose output, lead and limits are used (default: a usual"
            + " output, not calibrated).")
    private String rigName;

    @Mixin
    private OutputOptions output;

    @Mixin
    private PartOptions parts;

    @Option(names = "--values", paramLabel = "SERIES", description = "Preferred values to choose from: E12, E24 or E96 (default: E24).")
    private String values;

    @Option(names = "--tolerance", paramLabel = "PART", description = "Tolerance of the resistors (default: 1 %%).")
    private String tolerance;

    @Option(names = "--corner", paramLabel = "FREQUENCY", description = "Slowest signal that must pass (default: 2 Hz).")
    private String corner;

    @Option(names = "--duty", paramLabel = "PART", description = "Part of the time that the signal is high, like \"10 %%\" or"
            + " \"10 %% to 50 %%\" (default: 50 %%).")
    private String duty;

    @Mixin
    private LimitOptions limitOptions;

    @Option(names = "--drawing", paramLabel = "FILE", description = "Draws the box into this file (SVG).")
    private String drawing;

    @Option(names = "--save", description = "Puts the parts into the rig named with --rig.")
    private boolean save;

    @Mixin
    private JsonOption json = new JsonOption();

    public DividerCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        Optional<NamedRig> rig = Optional.ofNullable(rigName).map(surroundings::rig);
        AudioOutput from = output.read(rig.map(NamedRig::output).orElse(AudioOutput.NOMINAL), given);
        boolean calibrated = rig.map(NamedRig::calibrated).orElse(false) && !output.given();
        Lead lead = parts.lead(rig.map(NamedRig::lead), given);
        CurrentLimits limits = limitOptions.read(rig.map(NamedRig::limits).orElse(CurrentLimits.STANDARD), given);
        Optional<NamedInput> named = NamedInput.read(Location.of(Control.INPUT), input, given);
        Preferred series = VALUES.get(values == null ? "E24" : values.strip().toUpperCase(Locale.ROOT));
        if (series == null) {
            given.problem("--values", "\"" + values + "\" is no series of preferred values", "give E12, E24 or E96");
        }
        double partTolerance = given.quantity("--tolerance", tolerance, new Range(0, 20, Unit.PERCENT), 1) / 100;
        double cornerHz = given.quantity("--corner", corner, new Range(0.01, 1000, Unit.HERTZ), 2);
        Use use = duty == null ? Use.FULL : Use.read(Location.named("--duty"), duty, given);
        Optional<Coupling> coupling = parts.coupling(given);
        Optional<Divider> built = parts.namesResistors() ? parts.divider(Optional.empty(), given) : Optional.empty();
        Optional<Path> picture = given.picture("--drawing", drawing, List.of(".svg"));
        if (save && rig.isEmpty()) {
            given.problem("--save", "it needs a rig to save into", "add --rig NAME");
        }
        given.refuse();

        DividerSearch.Design design;
        if (built.isPresent()) {
            Assessment assessment = Assessment.of(new Rig(from, built.get(), lead), named.orElseThrow().input(), use);
            assessment.requireWithin(limits, series);
            design = new DividerSearch.Design(assessment, List.of());
        } else {
            design = DividerSearch.best(new DividerSearch.Request(from, lead, named.orElseThrow().input(), use, series,
                    partTolerance, cornerHz, limits, coupling));
        }
        DividerText report = new DividerText(design, named.get(), calibrated, limits);
        picture.ifPresent(file -> WiringDrawing.writeOrRefuse(design.assessment(), file));
        rig.filter(whichever -> save).ifPresent(whichever -> keep(whichever, design.assessment(), limits));
        json.print(surroundings, report::json, () -> lines(report, picture, rig.filter(whichever -> save)));
        return ExitCode.FINE;
    }

    private static List<String> lines(DividerText report, Optional<Path> picture, Optional<NamedRig> kept) {
        List<String> lines = new ArrayList<>(report.lines());
        picture.ifPresent(file -> lines.add("drawn in " + file));
        kept.ifPresent(rig -> lines.addAll(List.of("kept in rig " + rig.name() + "; if you build it otherwise, say so with",
                CommandWords.command("rig edit " + CommandWords.quoted(rig.name())))));
        return lines;
    }

    private void keep(NamedRig rig, Assessment chosen, CurrentLimits limits) {
        try (Store store = surroundings.store()) {
            NamedRig changed = new NamedRig(rig.name(), rig.device(), chosen.rig().output(), rig.calibrated() && !output.given(),
                    Optional.of(chosen.rig().divider()), chosen.rig().lead(), limits, rig.notes(), rig.created(),
                    surroundings.clock().instant());
            store.rigs().change(rig.name(), changed);
        }
    }
}
