package understudy.cli.hunt;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.Surroundings;
import understudy.report.Paper;
import understudy.report.Report;
import understudy.report.ReportFile;
import understudy.store.Store;
import understudy.text.Paragraph;
import understudy.trace.Entry;
import understudy.trace.Hunt;

/** Writes a job's report. */
@Command(
        name = "report",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Writes the report on a job, for the customer: as HTML or PDF.",
        footer = {
            "",
            "Examples:",
            "  understudy report first-try",
            "  understudy report first-try --to first-try.pdf",
            "  understudy report first-try --to first-try.pdf --paper Letter --replace",
            "",
            "The file holds everything that belongs to it, drawings too; nothing is fetched",
            "when it is read. 'understudy jobs' lists the jobs."
        })
public final class ReportCommand extends HouseCommand {

    @Parameters(paramLabel = "JOB", description = "The job, by its name.")
    private String jobName;

    @Option(names = "--to", paramLabel = "FILE", description = "A file (HTML or PDF by its ending). Without it: an HTML file in this"
            + " folder, called like the job.")
    private String to;

    @Option(names = "--paper", paramLabel = "SIZE", description = "A4 or Letter (default: A4).")
    private String paperName;

    @Option(names = "--replace", description = "Overwrites a file that is there already.")
    private boolean replace;

    public ReportCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        Paper paper = paper(given);
        Optional<Path> file = given.reportFile("--to", to == null ? ReportFile.name(jobName) : to);
        if (file.filter(Files::isDirectory).isPresent()) {
            given.problem("--to", file.get() + " is a folder", "give another name");
        } else if (!replace && file.filter(Files::exists).isPresent()) {
            given.problem("--to", "there is a file " + file.get() + " already", "give another name, or add --replace");
        }
        given.refuse();
        Hunt hunt = read();
        ReportFile.writeOrRefuse(Report.of(hunt, surroundings.clock().instant(), surroundings.clock().getZone()), paper, file.orElseThrow());
        surroundings.out().println("the report on job \"" + hunt.job().name() + "\" is in " + file.orElseThrow());
        if (hunt.standing().stream().noneMatch(event -> event.entry() instanceof Entry.Closed)) {
            Paragraph.lines("The job is not closed, so the report says that it is unfinished. Go on with: "
                    + CommandWords.program() + " trace --resume " + CommandWords.inQuotes(hunt.job().name())).forEach(surroundings.err()::println);
        }
        return ExitCode.FINE;
    }

    private Paper paper(Arguments given) {
        if (paperName == null) {
            return Paper.A4;
        }
        return Arrays.stream(Paper.values()).filter(paper -> paper.word().equalsIgnoreCase(paperName.strip())).findFirst()
                .orElseGet(() -> {
                    given.problem("--paper", "\"" + paperName + "\" is no paper that is known", "give A4 or Letter");
                    return Paper.A4;
                });
    }

    private Hunt read() {
        try (Store store = surroundings.store()) {
            return Hunt.of(store.jobs().find(jobName));
        }
    }
}
