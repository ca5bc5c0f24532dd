package understudy.cli.hunt;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Removal;
import understudy.cli.terminal.Surroundings;
import understudy.store.JobLine;
import understudy.store.Store;
import understudy.view.JobText;

/** Removes a job, on a yes that is spelled out. */
@Command(
        name = "remove",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Removes a job and all that happened in it, for good.",
        footer = {
            "",
            "Examples:",
            "  understudy jobs remove speedometer-may",
            "  understudy jobs remove speedometer-may --yes speedometer-may"
        })
final class JobsRemoveCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The job.")
    private String name;

    @Option(names = "--yes", paramLabel = "NAME", description = "Says yes by the job's name; for scripts.")
    private String yes;

    JobsRemoveCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        try (Store store = surroundings.store()) {
            JobLine job = store.jobs().line(name);
            new Removal("jobs remove", "job", job.name(), "job \"" + job.name() + "\" with " + JobText.steps(job.events())).agree(yes, surroundings);
            store.jobs().remove(job.name());
            surroundings.out().println("job \"" + job.name() + "\" is removed");
        }
        return ExitCode.FINE;
    }
}
