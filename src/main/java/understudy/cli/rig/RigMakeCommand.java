package understudy.cli.rig;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.store.NamedRig;
import understudy.store.Store;
import understudy.view.RigText;

/** Makes a rig. */
@Command(
        name = "make",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Makes a rig. What is not given is taken as usual, and said to be.",
        footer = {
            "",
            "Examples:",
            "  understudy rig make bench --device \"USB\"",
            "  understudy rig make bench --full-scale \"1.38 V 2%%\" --series \"18k 1%%\" --shunt \"4k7 1%%\""
        })
final class RigMakeCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "What to call it, like bench.")
    private String name;

    @Mixin
    private RigOptions options;

    RigMakeCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        NamedRig rig = options.make(name, surroundings.clock().instant(), given);
        given.refuse();
        try (Store store = surroundings.store()) {
            store.rigs().make(rig);
        }
        surroundings.out().println("made; it is kept");
        RigText.lines(rig, surroundings.times()).forEach(surroundings.out()::println);
        return ExitCode.FINE;
    }
}
