package understudy.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import understudy.store.Store;

/** Takes a job back that was put away. */
@Command(
        name = "unarchive",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists a job again that was archived.",
        footer = {"", "Examples:", "  understudy jobs unarchive speedometer-may"})
final class JobsUnarchiveCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The job.")
    private String name;

    JobsUnarchiveCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        try (Store store = surroundings.store()) {
            store.jobs().archive(name, false);
            surroundings.out().println("job \"" + store.jobs().line(name).name() + "\" is listed again");
        }
        return Main.FINE;
    }
}
