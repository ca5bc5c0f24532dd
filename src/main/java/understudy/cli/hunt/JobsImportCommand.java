package understudy.cli.hunt;

import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.refusal.Refused;
import understudy.store.JobFile;
import understudy.store.Store;
import understudy.trace.Job;
import understudy.view.JobText;

/** Takes a job from a file. */
@Command(
        name = "import",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Takes in a job from a file that export wrote.",
        footer = {
            "",
            "Examples:",
            "  understudy jobs import speedometer-may.json",
            "  understudy jobs import speedometer-may.json --as speedometer-copy"
        })
final class JobsImportCommand extends HouseCommand {

    @Parameters(paramLabel = "FILE", description = "The file (JSON).")
    private String file;

    @Option(names = "--as", paramLabel = "NAME", description = "Keeps it under this name (default: its own).")
    private String as;

    JobsImportCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Job job = JobFile.read(file, Optional.ofNullable(as));
        try (Store store = surroundings.store()) {
            if (store.jobs().has(job.name())) {
                throw new Refused(file + ": there is a job called \"" + JobText.oneLine(job.name())
                        + "\" already", "keep this one under another name with --as NAME");
            }
            store.jobs().begin(job);
        }
        surroundings.out().println("job \"" + job.name() + "\" is kept, with " + JobText.steps(job.events().size()));
        return ExitCode.FINE;
    }
}
