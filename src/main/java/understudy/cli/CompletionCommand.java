package understudy.cli;

import java.util.List;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;

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

    /** Asks the program for names, unless an option is being typed; what the generated script knows comes first. */
    private static final String NAMES = """

            # Names of patterns, circuits, rigs, jobs and pages, asked of the program itself.
            function _understudy_names() {
              _complete_understudy
              local typed=${COMP_WORDS[COMP_CWORD]} name
              [[ $typed == -* || COMP_CWORD -lt 2 ]] && return 0
              while IFS= read -r name; do
                [[ $name == "$typed"* ]] && COMPREPLY+=("$(printf %q "$name")")
              done < <("${COMP_WORDS[0]}" completion --names -- "${COMP_WORDS[@]:1:COMP_CWORD-1}" 2>/dev/null)
              return 0
            }
            complete -F _understudy_names -o default understudy understudy.sh understudy.bash
            """;

    @Option(names = "--names", hidden = true, description = "Prints the names that may follow these words.")
    private boolean names;

    @Parameters(hidden = true, arity = "0..*", description = "The words that stand before, the program's name left out.")
    private List<String> before = List.of();

    @Spec
    private CommandSpec spec;

    public CompletionCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        if (names) {
            new CompletionNames(surroundings).after(before).forEach(surroundings.out()::println);
        } else {
            surroundings.out().print(AutoComplete.bash("understudy", spec.root().commandLine().setCommandName("understudy")) + NAMES);
        }
        return ExitCode.FINE;
    }
}
