package understudy.cli.hunt;

import picocli.CommandLine.Command;
import understudy.cli.terminal.Surroundings;

/** Takes a job back that was put away. */
@Command(
        name = "unarchive",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists a job again that was archived.",
        footer = {"", "Examples:", "  understudy jobs unarchive speedometer-may"})
final class JobsUnarchiveCommand extends JobsArchiveCommand {

    JobsUnarchiveCommand(Surroundings surroundings) {
        super(surroundings, false);
    }
}
