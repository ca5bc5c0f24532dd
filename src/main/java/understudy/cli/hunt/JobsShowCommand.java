package understudy.cli.hunt;

import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.store.Store;
import understudy.trace.Hunt;
import understudy.view.JobText;

/** Shows one job. */
@Command(
        name = "show",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Shows what happened in a job, how it stands, what is next.",
        footer = {"", "Examples:", "  understudy jobs show speedometer-may"})
final class JobsShowCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The job.")
    private String name;

    JobsShowCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        try (Store store = surroundings.store()) {
            Hunt hunt = Hunt.of(store.jobs().find(name));
            new JobText(hunt, surroundings.times()).lines(store.jobs().line(name)).forEach(surroundings.out()::println);
        }
        return ExitCode.FINE;
    }
}
