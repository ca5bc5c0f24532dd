package understudy.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Job;
import understudy.trace.Place;
import understudy.trace.Step;
import understudy.trace.TraceException;

/** Jobs kept, found again exactly as they were, listed, searched, put away and removed. */
class JobsTest {

    private static final Instant NOON = JobSamples.NOON;

    @TempDir
    private Path folder;

    private Store store;
    private Jobs jobs;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("understudy.db"));
        jobs = store.jobs();
    }

    @AfterEach
    void close() {
        store.close();
    }

    private static Entry cautioned(Hunt hunt) {
        return new Entry.Cautioned(hunt.hazards());
    }

    @Test
    void jobsComeBackAsTheyWereWithEveryKindOfEntry() {
        Set<Class<?>> kinds = new HashSet<>();
        for (int seed = 0; seed < 60; seed++) {
            Job job = JobSamples.random("job " + seed, seed, 60).job();
            jobs.begin(job);
            assertThat(jobs.find("JOB " + seed)).isEqualTo(job);
            job.events().forEach(event -> kinds.add(event.entry().getClass()));
        }
        assertThat(kinds).as("the samples hold all there are").containsExactlyInAnyOrder(Entry.class.getPermittedSubclasses());
    }

    @Test
    void whatIsAddedOneByOneIsTheSameAsAllAtOnce() {
        for (int seed = 0; seed < 20; seed++) {
            Job whole = JobSamples.random("whole " + seed, seed, 40).job();
            jobs.begin(whole);
            Job bare = new Job("step " + seed, whole.begun(), whole.vehicle(), whole.complaint(), whole.who(), whole.suspect(),
                    whole.reference(), whole.equipment(), List.of());
            Hunt hunt = jobs.begin(bare);
            for (Job.Event event : whole.events()) {
                hunt = jobs.add(hunt, event.at(), event.entry());
            }
            assertThat(hunt.job().events()).isEqualTo(whole.events());
            assertThat(jobs.find("step " + seed)).isEqualTo(hunt.job());
            JobLine line = jobs.line("whole " + seed);
            assertThat(jobs.line("step " + seed)).isEqualTo(new JobLine("step " + seed, line.begun(), line.vehicle(),
                    line.complaint(), line.who(), line.circuitTitle(), line.events(), line.state(), line.closed(), false,
                    line.changed()));
        }
    }
}
