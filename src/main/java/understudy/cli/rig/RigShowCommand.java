package understudy.cli.rig;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Surroundings;
import understudy.store.Calibration;
import understudy.store.NamedRig;
import understudy.store.Store;
import understudy.view.RigText;

/** Shows one rig. */
@Command(
        name = "show",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Shows one rig, with its calibrations.",
        footer = {"", "Examples:", "  understudy rig show bench", "  understudy rig show bench --json"})
final class RigShowCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The rig.")
    private String name;

    @Mixin
    private JsonOption json = new JsonOption();

    RigShowCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        try (Store store = surroundings.store()) {
            NamedRig rig = store.rigs().find(name);
            List<Calibration> calibrations = store.rigs().calibrations(name);
            json.print(surroundings, () -> RigText.json(rig, calibrations), () -> RigText.lines(rig, calibrations, surroundings.times()));
        }
        return ExitCode.FINE;
    }
}
