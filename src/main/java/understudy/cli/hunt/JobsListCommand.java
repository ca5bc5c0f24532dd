package understudy.cli.hunt;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Surroundings;
import understudy.store.JobLine;
import understudy.store.Jobs;
import understudy.store.Store;
import understudy.view.JobText;

/** Lists jobs, and finds them. */
@Command(
        name = "list",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists your jobs, the latest first.",
        footer = {
            "",
            "Examples:",
            "  understudy jobs list",
            "  understudy jobs list fieldhand rough",
            "  understudy jobs list --all --json"
        })
final class JobsListCommand extends HouseCommand {

    private static final int USUAL = 50;
    private static final int MOST = 1_000_000;

    @Parameters(
            paramLabel = "WORD",
            arity = "0..*",
            description = "Lists those in which every word is found: in name, vehicle, complaint, who, circuit, notes.")
    private List<String> words = List.of();

    @Option(names = "--all", description = "Lists the archived ones too.")
    private boolean all;

    @Option(names = "--most", paramLabel = "N", description = "Lists so many at most (default: " + USUAL + ").")
    private String most;

    @Mixin
    private JsonOption json = new JsonOption();

    JobsListCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        Arguments given = new Arguments();
        int wanted = given.whole("--most", most, 1, MOST, USUAL);
        given.refuse();
        try (Store store = surroundings.store()) {
            String asked = String.join(" ", words);
            List<JobLine> lines = store.jobs().search(asked, all, wanted);
            json.print(surroundings, () -> JobText.listed(lines), () -> lines.isEmpty()
                    ? List.of(none(store.jobs())) : table(lines, store.jobs().count(asked, all)));
        }
        return ExitCode.FINE;
    }

    private List<String> table(List<JobLine> found, int count) {
        List<String> lines = new ArrayList<>(JobText.table(found, surroundings.times()));
        if (count > found.size()) {
            lines.add("and " + (count - found.size()) + " more; add words to search for, or --most " + count);
        }
        return lines;
    }

    private String none(Jobs jobs) {
        int archived = jobs.count("", true);
        if (archived == 0) {
            return "There is no job yet; begin one with " + CommandWords.command("trace CIRCUIT") + ".";
        }
        String which = words.isEmpty() ? "There is no job that is not archived" : "No job has all these words";
        return which + (all ? "." : "; --all looks among the archived ones too.");
    }
}
