package understudy.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import understudy.store.Store;

/** Puts a job away. */
@Command(
        name = "archive",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Puts a job away: it is kept, but no longer listed.",
        footer = {"", "Examples:", "  understudy jobs archive speedometer-may"})
final class JobsArchiveCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The job.")
    private String name;

    JobsArchiveCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        try (Store store = surroundings.store()) {
            store.jobs().archive(name, true);
            surroundings.out().println("job \"" + store.jobs().line(name).name() + "\" is archived");
        }
        return Main.FINE;
    }
}
