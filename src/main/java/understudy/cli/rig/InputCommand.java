package understudy.cli.rig;

import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Surroundings;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.rig.Meter;
import understudy.rig.Spread;
import understudy.rig.UnknownInput;
import understudy.view.InputText;

/** Finds the kind of an unknown input from a meter's readings, and lists the kinds that are known. */
@Command(
        name = "input",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Finds what kind of input a pin is, from a meter's readings.",
        footer = {
            "",
            "Measure at the module's side, sensor unplugged, key on: volts from the pin to",
            "ground; then the same with a known resistor from the pin to ground. Without",
            "readings, the kinds are listed.",
            "",
            "Examples:",
            "  understudy input",
            "  understudy input --open \"4.96 V\" --with \"10k 1%%\" --loaded \"3.31 V\""
        })
public final class InputCommand extends HouseCommand {

    private static final Range VOLTS = new Range(-60, 60, Unit.VOLT);
    private static final Range OHMS = new Range(1, 1e9, Unit.OHM);

    @Option(names = "--open", paramLabel = "VOLTS", description = "The meter's reading on the bare pin.")
    private String open;

    @Option(names = "--with", paramLabel = "OHMS", description = "The known resistor, like \"10k 1%%\".")
    private String known;

    @Option(names = "--loaded", paramLabel = "VOLTS", description = "The reading with that resistor from the pin to ground.")
    private String loaded;

    @Option(names = "--meter-ohms", paramLabel = "OHMS", description = "The meter's own resistance (default: 10 Mohm).")
    private String meterOhms;

    @Option(names = "--meter-accuracy", paramLabel = "PART", description = "How far its readings may be off (default: 0.8 %%).")
    private String accuracy;

    @Mixin
    private JsonOption json = new JsonOption();

    public InputCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        if (open == null && known == null && loaded == null && meterOhms == null && accuracy == null) {
            json.print(surroundings, InputText::kindsJson, () -> InputText.kinds(CommandWords.wording()));
            return ExitCode.FINE;
        }
        Arguments given = new Arguments();
        for (String[] needed : new String[][] {
            {"--open", open, "give the reading on the bare pin, like --open \"4.96 V\""},
            {"--with", known, "give the known resistor, like --with \"10k 1%\""},
            {"--loaded", loaded, "give the reading with the resistor, like --loaded \"3.31 V\""}}) {
            if (needed[1] == null) {
                given.problem(needed[0], "it is missing", needed[2]);
            }
        }
        double openVolts = given.quantity("--open", open, VOLTS, 0);
        double loadedVolts = given.quantity("--loaded", loaded, VOLTS, 0);
        Optional<Spread> resistor = given.part("--with", known, OHMS, 0.01);
        double ohms = given.quantity("--meter-ohms", meterOhms, OHMS, Meter.USUAL.inputOhms());
        double part = given.quantity("--meter-accuracy", accuracy, new Range(0, 20, Unit.PERCENT),
                Meter.USUAL.accuracy() * 100) / 100;
        Optional<Meter> meter = given.attempt("--meter-ohms", () -> new Meter(ohms, part, Meter.USUAL.stepVolts()));
        given.refuse();
        UnknownInput found = given.attempt("input", () -> UnknownInput.from(openVolts, resistor.orElseThrow(), loadedVolts,
                meter.orElseThrow())).orElse(null);
        given.refuse();
        InputText text = new InputText(found);
        json.print(surroundings, text::json, text::lines);
        return ExitCode.FINE;
    }
}
