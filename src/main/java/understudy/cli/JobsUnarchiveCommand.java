package understudy.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import understudy.store.Store;

/** Takes a job back that was put away. */
@Command(
        name = "unarchive",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists a job again that was archived.",
        footer = {"", "Examples:", "  understudy jobs unarchive speedometer-may"})
final class JobsUnarchiveCommand implements Callable<Integer> {

    private final Surroundings surroundings;

    @Mixin
    private HelpOption help;

    @Parameters(paramLabel = "NAME", description = "The job.")
    private String name;

    JobsUnarchiveCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
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
