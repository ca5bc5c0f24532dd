package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.report.Paper;
import understudy.report.Report;
import understudy.report.ReportFile;
import understudy.store.JobFile;
import understudy.store.Store;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Job;
import understudy.trace.Suspect;

/** The guide's walk-through can be followed as it is written, and the sample job that ships is what comes of it. */
class WalkTest {

    private static final Path PAGE = Path.of("src/main/resources/guide/walk.md");
    private static final Path SAMPLE = Path.of("patterns/circuits/sample");
    private static final Pattern ROW = Pattern.compile("\\| (?!it asks|---)(.*) \\| (?:`(.*)`( each time)?|Enter) \\|");
    private static final Pattern COMMAND = Pattern.compile("(?m)^understudy (trace fieldhand.*)$");

    @TempDir
    private Path home;

    /** What the page's table has a person type, the cautions as often as there are some. */
    static String typed(int cautions) throws IOException {
        List<String> lines = new ArrayList<>();
        Matcher row = ROW.matcher(Files.readString(PAGE));
        while (row.find()) {
            String line = row.group(2) == null ? "" : row.group(2);
            for (int time = 0; time < (row.group(3) == null ? 1 : cautions); time++) {
                lines.add(line);
            }
        }
        return String.join("\n", lines) + "\n";
    }

    /** The speedometer's own hazard, the wheel speed's of the reference, and those of every circuit. */
    static int cautions() {
        return Hunt.of(JobFile.read(SAMPLE.resolve("fieldhand.json").toString(), Optional.empty())).hazards().size();
    }

    @Test
    void theWalkEndsWithTheTunnelConnectorConvictedRepairedAndProven() throws IOException {
        Matcher command = COMMAND.matcher(Files.readString(PAGE));
        assertThat(command.find()).isTrue();
        Run.Outcome walked = Run.in(home).piping(typed(cautions())).understudy(HelpTest.words(command.group(1)));
        assertThat(walked.exitCode()).as(walked.out() + walked.err()).isZero();
        assertThat(walked.out()).contains("FOUND: The fault is in connector \"tunnel connector and tunnel harness\"");

        try (Store store = Run.in(home).store()) {
            Hunt hunt = Hunt.of(store.jobs().find("fieldhand"));
            assertThat(hunt.finding().suspects()).extracting(Suspect::index).containsExactly(2);
            assertThat(hunt.finding().decided()).isTrue();
            assertThat(hunt.repairProven()).isTrue();
            assertThat(entries(hunt.job())).isEqualTo(entries(sample()));
        }
    }

    @Test
    void theSampleCanBeTakenInAndReportsAsItsReportSays() throws IOException {
        Run.Outcome taken = Run.in(home).understudy("jobs", "import", SAMPLE.resolve("fieldhand.json").toString());
        assertThat(taken.exitCode()).as(taken.err()).isZero();
        Hunt hunt = Hunt.of(sample());
        Report report = Report.of(hunt, Instant.parse("2026-05-04T10:05:00Z"), ZoneOffset.UTC);
        Path written = home.resolve("fieldhand.html");
        ReportFile.write(report, Paper.A4, written);
        assertThat(Files.readString(written)).isEqualTo(Files.readString(SAMPLE.resolve("fieldhand.html")));
    }

    private static Job sample() {
        return JobFile.read(SAMPLE.resolve("fieldhand.json").toString(), Optional.empty());
    }

    private static List<Entry> entries(Job job) {
        return job.events().stream().map(Job.Event::entry).toList();
    }
}
