package understudy.cli.hunt;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.refusal.Refused;
import understudy.store.JobFile;
import understudy.store.JobTable;
import understudy.store.Store;
import understudy.text.WholeFile;
import understudy.trace.Hunt;
import understudy.trace.Job;
import understudy.view.JobText;

/** Writes one job into a file. */
@Command(
        name = "export",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Writes a job into a file: all of it, or a table of what happened.",
        footer = {
            "",
            "Examples:",
            "  understudy jobs export speedometer-may --to speedometer-may.json",
            "  understudy jobs export speedometer-may --to speedometer-may.csv --replace"
        })
final class JobsExportCommand extends HouseCommand {

    @Parameters(paramLabel = "NAME", description = "The job.")
    private String name;

    @Option(
            names = "--to",
            paramLabel = "FILE",
            required = true,
            description = "Ending in .json: all of it, to be imported elsewhere. Ending in .csv: what happened, for a spreadsheet.")
    private String to;

    @Option(names = "--replace", description = "Replaces the file if it is there.")
    private boolean replace;

    JobsExportCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        Path file = given.jobFile("--to", to).orElse(null);
        if (file != null && !replace && Files.exists(file)) {
            given.problem("--to", file + " is there already", "give another name, or add --replace");
        }
        given.refuse();
        Job job;
        try (Store store = surroundings.store()) {
            job = store.jobs().find(name);
        }
        String text = to.toLowerCase(Locale.ROOT).endsWith(".csv") ? JobTable.of(Hunt.of(job)) : JobFile.text(job);
        try {
            WholeFile.write(text, file);
        } catch (IOException e) {
            throw Refused.setup(file.toString(), "it could not be written (" + e.getMessage() + ")", "nothing was changed; see that there is"
                    + " room, and that you may write there", e);
        }
        surroundings.out().println("job \"" + JobText.oneLine(job.name()) + "\" is in " + file);
        return ExitCode.FINE;
    }
}
