package understudy.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import understudy.store.Store;

/** Puts a job away. */
@Command(
        name = "archive",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Puts a job away: it is kept, but no longer listed.",
        footer = {"", "Examples:", "  understudy jobs archive speedometer-may"})
final class JobsArchiveCommand implements Callable<Integer> {

    private final Surroundings surroundings;

    @Mixin
    private HelpOption help;

    @Parameters(paramLabel = "NAME", description = "The job.")
    private String name;

    JobsArchiveCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
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
