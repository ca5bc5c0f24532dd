package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.cli.terminal.ExitCode;
import understudy.pattern.PatternLibrary;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.report.ReportFile;
import understudy.store.Store;
import understudy.trace.CircuitLibrary;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Job;

class ReportCommandTest {

    private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");

    @TempDir
    private Path home;

    @BeforeEach
    void aJobIsKept() throws IOException {
        Run run = Run.in(home);
        Job job = new Job("first try: \u00dcbung", NOON, "Fieldhand 4", "Drops to zero", "A. Student", new Job.Subject(
                CircuitLibrary.open().source("fieldhand-4-speedometer").value().orElseThrow(),
                PatternLibrary.open().source("output-shaft-17-vr").value().orElseThrow()), Optional.empty(),
                new Job.Equipment(Optional.empty(), Optional.empty(), new Range(-0.5, 3, Unit.VOLT), List.of("played silently")),
                List.of());
        Files.createDirectories(run.folders().data());
        try (Store store = Store.open(run.folders().data().resolve("understudy.db"))) {
            Hunt hunt = store.jobs().begin(job);
            store.jobs().add(hunt, NOON, new Entry.Cautioned(hunt.hazards()));
        }
    }

    private Run.Outcome report(String... options) {
        String[] args = new String[options.length + 2];
        args[0] = "report";
        args[1] = "first try: \u00dcbung";
        System.arraycopy(options, 0, args, 2, options.length);
        return Run.in(home).understudy(args);
    }

    @Test
    void writesHtmlOrPdfAndSaysWhere() throws IOException {
        Path html = home.resolve("r.html");
        Run.Outcome outcome = report("--to", html.toString(), "--paper", "letter");
        assertThat(outcome.exitCode()).isZero();
        assertThat(outcome.out()).isEqualTo("the report on job \"first try: \u00dcbung\" is in " + html + "\n");
        assertThat(outcome.err()).isEqualTo("""
                The job is not closed, so the report says that it is unfinished. Go on with:
                understudy trace --resume "first try: \u00dcbung"
                """);
        assertThat(Files.readString(html)).contains("size: Letter", "2026-03-01 12:00 UTC");
        Path pdf = home.resolve("r.PDF");
        assertThat(report("--to", pdf.toString()).exitCode()).isZero();
        assertThat(new String(Files.readAllBytes(pdf), 0, 5)).isEqualTo("%PDF-");
    }

    @Test
    void aFileIsOverwrittenOnlyWhenAsked() throws IOException {
        Path file = Files.writeString(home.resolve("r.html"), "mine");
        Run.Outcome refused = report("--to", file.toString());
        assertThat(refused.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(refused.err()).isEqualTo("--to: there is a file " + file + " already; give another name, or add --replace\n");
        assertThat(file).hasContent("mine");
        assertThat(report("--to", file.toString(), "--replace").exitCode()).isZero();
        assertThat(Files.readString(file)).startsWith("<!DOCTYPE html>");
    }

    @Test
    void everythingWrongIsToldAtOnceAndNothingIsWritten() {
        Run.Outcome outcome = report("--to", "r.docx", "--paper", "B7");
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(outcome.err()).isEqualTo("""
                --paper: "B7" is no paper that is known; give A4 or Letter
                --to: "r.docx" is no name for a report; give a name that ends in .html or .pdf
                """);
        Run.Outcome folder = report("--to", home.resolve("missing").resolve("r.pdf").toString());
        assertThat(folder.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(folder.err()).contains("there is no folder");
    }

    @Test
    void aJobThatIsNotThereIsBadInput() {
        Path file = home.resolve("r.html");
        Run.Outcome outcome = Run.in(home).understudy("report", "first tri", "--to", file.toString());
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(outcome.err()).contains("first tri");
        assertThat(file).doesNotExist();
    }

    @Test
    void withoutANameTheJobGivesIt() {
        assertThat(ReportFile.name("first try: \u00dcbung")).isEqualTo("first-try-\u00dcbung.html");
        assertThat(ReportFile.name("../etc/passwd")).isEqualTo("etc-passwd.html");
        assertThat(ReportFile.name("???")).isEqualTo("report.html");
    }

    @Test
    void aFolderThatMayNotBeWrittenFailsWithTheReason() throws IOException {
        // a name too long for any usual file system: refused to every user, root too
        Run.Outcome outcome = report("--to", home.resolve("n".repeat(300) + ".pdf").toString());
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(outcome.err()).contains("the report could not be written: File name too long; see that");
    }
}
