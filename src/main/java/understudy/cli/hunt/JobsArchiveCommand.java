package understudy.cli.hunt;

import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.store.Store;

/** Puts a job away. */
@Command(
        name = "archive",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Puts a job away: it is kept, but no longer listed.",
        footer = {"", "Examples:", "  understudy jobs archive speedometer-may"})
class JobsArchiveCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The job.")
    private String name;

    private final boolean away;

    JobsArchiveCommand(Surroundings surroundings) {
        this(surroundings, true);
    }

    /** @param away or back among the others */
    JobsArchiveCommand(Surroundings surroundings, boolean away) {
        super(surroundings);
        this.away = away;
    }

    @Override
    public Integer call() {
        try (Store store = surroundings.store()) {
            store.jobs().archive(name, away);
            surroundings.out().println("job \"" + store.jobs().line(name).name() + (away ? "\" is archived" : "\" is listed again"));
        }
        return ExitCode.FINE;
    }
}
