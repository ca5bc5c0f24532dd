package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.store.Store;
import understudy.trace.Job;

class TraceQuestionsTest {

    @TempDir
    private Path home;

    @Test
    void aQuestionMarkIsExplainedAndNeverKept() {
        TraceBench.Outcome trace = new TraceBench(home, TraceCommandTest.POINTS, 2).answering("Vehicle", "?", "Fieldhand 4").answering("Complaint", "help", "none")
                .answering("Who does the work", "?", "me").answering("Name of the job", "?", "asked").leavingAfter(12)
                .understudy("trace", "fieldhand-4-speedometer", "--to", "silent");
        assertThat(trace.out().replaceAll("\\s+", " ")).contains("Which vehicle it is, as you would find it again");
        try (Store store = Run.in(home).store()) {
            Job job = store.jobs().find("asked");
            assertThat(List.of(job.vehicle(), job.complaint(), job.who())).containsExactly("Fieldhand 4", "none", "me");
        }
    }
}
