package understudy.cli;

import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints what a shell needs to complete commands and options. */
@Command(
        name = "completion",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Prints completion for bash and zsh.",
        footer = {
            "",
            "Examples:",
            "  source <(understudy completion)    now, in this shell",
            "  understudy completion >> ~/.bashrc    in every bash from the next on"
        })
final class CompletionCommand extends HouseCommand {

    @Spec
    private CommandSpec spec;

    CompletionCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        surroundings.out().print(AutoComplete.bash("understudy", spec.root().commandLine()));
        return Main.FINE;
    }
}
