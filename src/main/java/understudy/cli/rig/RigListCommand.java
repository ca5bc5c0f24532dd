package understudy.cli.rig;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Surroundings;
import understudy.store.NamedRig;
import understudy.store.Store;
import understudy.view.RigText;

/** Lists the rigs. */
@Command(
        name = "list",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists your rigs.",
        footer = {"", "Examples:", "  understudy rig list", "  understudy rig list --json > rigs.json"})
final class RigListCommand extends HouseCommand {

    @Mixin
    private JsonOption json = new JsonOption();

    RigListCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        try (Store store = surroundings.store()) {
            List<NamedRig> rigs = store.rigs().all();
            json.print(surroundings, () -> RigText.json(rigs, rig -> store.rigs().calibrations(rig.name())),
                    () -> RigText.listed(rigs, CommandWords.wording()));
        }
        return ExitCode.FINE;
    }
}
