package understudy.cli.rig;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.store.Calibration;
import understudy.store.NamedRig;
import understudy.store.Store;
import understudy.text.Json;
import understudy.view.RigText;

/** Tells all about one rig. */
@Command(
        name = "show",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Shows one rig, with its calibrations.",
        footer = {"", "Examples:", "  understudy rig show bench", "  understudy rig show bench --json"})
final class RigShowCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The rig.")
    private String name;

    @Option(names = "--json", description = "Prints JSON, for scripts.")
    private boolean json;

    RigShowCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        try (Store store = surroundings.store()) {
            NamedRig rig = store.rigs().find(name);
            List<Calibration> calibrations = store.rigs().calibrations(name);
            if (json) {
                surroundings.out().println(Json.text(RigText.json(rig, calibrations)));
            } else {
                RigText.lines(rig, surroundings.times()).forEach(surroundings.out()::println);
                RigText.history(calibrations, surroundings.times()).forEach(surroundings.out()::println);
            }
        }
        return ExitCode.FINE;
    }
}
