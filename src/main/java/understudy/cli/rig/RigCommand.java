package understudy.cli.rig;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import understudy.cli.terminal.CommandSet;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HelpOption;
import understudy.cli.terminal.Surroundings;

/** The rigs that the user has on the bench. */
@Command(
        name = "rig",
        sortOptions = false,
        abbreviateSynopsis = true,
        synopsisSubcommandLabel = "COMMAND",
        description = "Keeps your rigs: output, calibration, the divider as built.",
        footer = {
            "",
            "Examples:",
            "  understudy rig make bench --device \"USB\"",
            "  understudy divider --rig bench --input reluctor-adaptive --save",
            "  understudy rig edit bench --series \"10k 1%%\" --shunt \"4k7 1%%\"",
            "  understudy rig show bench"
        })
public final class RigCommand implements Callable<Integer> {

    private static final CommandSet COMMANDS = new CommandSet()
            .with("make", RigMakeCommand::new)
            .with("list", RigListCommand::new)
            .with("show", RigShowCommand::new)
            .with("edit", RigEditCommand::new)
            .with("remove", RigRemoveCommand::new);

    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    private RigCommand() {}

    public static CommandLine with(Surroundings surroundings, String... words) {
        return COMMANDS.below(new RigCommand(), surroundings, words);
    }

    /** Without a command: the overview, as bad input, so that a script notices. */
    @Override
    public Integer call() {
        spec.commandLine().usage(spec.commandLine().getErr());
        return ExitCode.BAD_INPUT;
    }
}
