package understudy.cli.rig;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.store.NamedRig;
import understudy.store.Store;
import understudy.view.RigText;

/** Changes a rig. */
@Command(
        name = "edit",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Changes a rig; what is not given stays as it is.",
        footer = {
            "",
            "Examples:",
            "  understudy rig edit bench --series \"17.8k 1%%\" --shunt \"4k7 1%%\"",
            "  understudy rig edit bench --rename table --notes \"second shelf\"",
            "  understudy rig edit bench --override-limit \"5 mA to 6 mA\" --because \"module's data, page 7: 10 mA\""
        })
final class RigEditCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The rig.")
    private String name;

    @Option(names = "--rename", paramLabel = "NAME", description = "Another name for it.")
    private String rename;

    @Mixin
    private RigOptions options;

    RigEditCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        if (!options.given() && rename == null) {
            given.problem("rig edit", "nothing to change was given", "say what, like --notes \"second shelf\"");
        }
        given.refuse();
        try (Store store = surroundings.store()) {
            NamedRig before = store.rigs().find(name);
            NamedRig after = options.read(rename == null ? before.name() : rename, before, surroundings.clock().instant(), given);
            given.refuse();
            store.rigs().change(name, after);
            surroundings.out().println("changed; it is kept");
            if (before.calibrated() && !after.calibrated()) {
                surroundings.out().println("its calibration no longer counts, since its output was changed; it stays in the history");
            }
            RigText.lines(after, surroundings.times()).forEach(surroundings.out()::println);
        }
        return ExitCode.FINE;
    }
}
