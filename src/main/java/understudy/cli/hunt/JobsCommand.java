package understudy.cli.hunt;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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

    @Mixin
    private HelpOption help;

    private final JobsListCommand list;

    private JobsCommand(JobsListCommand list) {
        this.list = list;
    }

    public static CommandLine with(Surroundings surroundings) {
        return new CommandLine(new JobsCommand(new JobsListCommand(surroundings))).addSubcommand(new JobsListCommand(surroundings))
                .addSubcommand(new JobsShowCommand(surroundings)).addSubcommand(new JobsCorrectCommand(surroundings))
                .addSubcommand(new JobsExportCommand(surroundings)).addSubcommand(new JobsImportCommand(surroundings))
                .addSubcommand(new JobsArchiveCommand(surroundings)).addSubcommand(new JobsUnarchiveCommand(surroundings))
                .addSubcommand(new JobsRemoveCommand(surroundings));
    }

    /** Without a command: the list. */
    @Override
    public Integer call() {
        return list.call();
    }
}
