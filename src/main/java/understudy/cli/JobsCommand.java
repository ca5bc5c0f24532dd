package understudy.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

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
final class JobsCommand implements Callable<Integer> {

    @Mixin
    private HelpOption help;

    private final JobsListCommand list;

    private JobsCommand(JobsListCommand list) {
        this.list = list;
    }

    static CommandLine with(Surroundings surroundings) {
        CommandLine jobs = new CommandLine(new JobsCommand(new JobsListCommand(surroundings)));
        jobs.addSubcommand(new JobsListCommand(surroundings));
        jobs.addSubcommand(new JobsShowCommand(surroundings));
        jobs.addSubcommand(new JobsCorrectCommand(surroundings));
        jobs.addSubcommand(new JobsExportCommand(surroundings));
        jobs.addSubcommand(new JobsImportCommand(surroundings));
        jobs.addSubcommand(new JobsArchiveCommand(surroundings));
        jobs.addSubcommand(new JobsUnarchiveCommand(surroundings));
        jobs.addSubcommand(new JobsRemoveCommand(surroundings));
        return jobs;
    }

    /** Without a command: the list. */
    @Override
    public Integer call() {
        return list.call();
    }
}
