package understudy.cli.hunt;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import understudy.cli.terminal.CommandSet;
import understudy.cli.terminal.HelpOption;
import understudy.cli.terminal.Surroundings;

/** The fault hunts that are kept. */
@Command(
        name = "jobs",
        sortOptions = false,
        abbreviateSynopsis = true,
        synopsisSubcommandLabel = "[COMMAND]",
        description = "Lists, shows, corrects, exports, archives and removes your jobs.",
        footer = {
            "",
            "Examples:",
            "  understudy jobs",
            "  understudy jobs list fieldhand rough",
            "  understudy jobs show speedometer-may",
            "  understudy jobs export speedometer-may --to speedometer-may.json"
        })
public final class JobsCommand implements Callable<Integer> {

    private static final CommandSet COMMANDS = new CommandSet()
            .with("list", JobsListCommand::new)
            .with("show", JobsShowCommand::new)
            .with("correct", JobsCorrectCommand::new)
            .with("export", JobsExportCommand::new)
            .with("import", JobsImportCommand::new)
            .with("archive", JobsArchiveCommand::new)
            .with("unarchive", JobsUnarchiveCommand::new)
            .with("remove", JobsRemoveCommand::new);

    @Mixin
    private HelpOption help;

    private final JobsListCommand list;

    private JobsCommand(JobsListCommand list) {
        this.list = list;
    }

    public static CommandLine with(Surroundings surroundings, String... words) {
        return COMMANDS.below(new JobsCommand(new JobsListCommand(surroundings)), surroundings, words);
    }

    /** Without a command: the list. */
    @Override
    public Integer call() {
        return list.call();
    }
}
