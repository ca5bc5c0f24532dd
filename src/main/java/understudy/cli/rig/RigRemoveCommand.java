package understudy.cli.rig;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Removal;
import understudy.cli.terminal.Surroundings;
import understudy.store.NamedRig;
import understudy.store.Store;

/** Removes a rig, on a yes that is spelled out. */
@Command(
        name = "remove",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Removes a rig and its calibrations, for good.",
        footer = {"", "Examples:", "  understudy rig remove bench", "  understudy rig remove bench --yes bench"})
final class RigRemoveCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The rig.")
    private String name;

    @Option(names = "--yes", paramLabel = "NAME", description = "Says yes by the rig's name; for scripts.")
    private String yes;

    RigRemoveCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        try (Store store = surroundings.store()) {
            NamedRig rig = store.rigs().find(name);
            int calibrations = store.rigs().calibrations(name).size();
            new Removal("rig remove", "rig", rig.name(), rig.name() + " and its calibrations (" + calibrations + ")").agree(yes, surroundings);
            store.rigs().remove(name);
            surroundings.out().println(rig.name() + " is removed");
        }
        return ExitCode.FINE;
    }
}
