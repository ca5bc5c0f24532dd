package understudy.cli.rig;

import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.store.NamedRig;
import understudy.store.RigWords;
import understudy.store.Store;
import understudy.text.Json;
import understudy.text.Table;
import understudy.view.RigText;

/** Lists the rigs. */
@Command(
        name = "list",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists your rigs.",
        footer = {"", "Examples:", "  understudy rig list", "  understudy rig list --json > rigs.json"})
final class RigListCommand extends HouseCommand {

    @Option(names = "--json", description = "Prints all of every rig, its calibrations too, as JSON.")
    private boolean json;

    RigListCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        try (Store store = surroundings.store()) {
            List<NamedRig> rigs = store.rigs().all();
            if (json) {
                surroundings.out().println(Json.text(RigText.json(rigs, rig -> store.rigs().calibrations(rig.name()))));
            } else if (rigs.isEmpty()) {
                surroundings.out().println("There is no rig yet; make one with " + CommandWords.command("rig make NAME") + ".");
            } else {
                Table table = new Table();
                rigs.forEach(rig -> table.row(rig.name(), RigWords.output(rig), RigWords.divider(rig)));
                table.lines().forEach(surroundings.out()::println);
            }
        }
        return ExitCode.FINE;
    }
}
