package understudy.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
final class CompletionCommand implements Callable<Integer> {

    private final Surroundings surroundings;

    @Mixin
    private HelpOption help;

    @Spec
    private CommandSpec spec;

    CompletionCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        surroundings.out().print(AutoComplete.bash("understudy", spec.root().commandLine()));
        return Main.FINE;
    }
}
