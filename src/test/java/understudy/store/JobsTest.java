package understudy.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.text.Source;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Job;
import understudy.trace.Place;
import understudy.refusal.Refused;

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

    @Test
    void aNameIsTakenWhateverTheCaseOfItsLetters() {
        jobs.begin(JobSamples.fresh("Größe Zwei"));
        for (String other : List.of("Größe Zwei", "GRÖSSE ZWEI", "größe  zwei")) {
            assertThatThrownBy(() -> jobs.begin(JobSamples.fresh(other))).isInstanceOf(Refused.class)
                    .hasMessage("there is a job called \"" + other + "\" already; give another name");
            assertThat(jobs.find(other).name()).isEqualTo("Größe Zwei");
        }
        assertThat(jobs.list(false)).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", " a", "a ", "two\nlines", "bell\u0007", "x234567890123456789012345678901234567890123456789012345678901"})
    void whatIsNoNameIsRefused(String name) {
        assertThatThrownBy(() -> jobs.begin(JobSamples.fresh(name))).isInstanceOf(Refused.class)
                .hasMessageEndingWith("is no name for a job; give 1 to 60 letters, digits and signs on one line, without a blank at"
                        + " either end, like \"speedometer, May\"");
        assertThat(jobs.list(false)).isEmpty();
    }

    @Test
    void anUnknownNameIsToldTheNearest() {
        assertThatThrownBy(() -> jobs.find("speedo")).isInstanceOf(Refused.class)
                .hasMessage("there is no job called \"speedo\"; begin one: begin a hunt");
        jobs.begin(JobSamples.fresh("speedometer"));
        assertThatThrownBy(() -> jobs.find("spedometer"))
                .hasMessage("there is no job called \"spedometer\"; did you mean \"speedometer\"?");
        assertThatThrownBy(() -> jobs.remove("crank")).hasMessage("there is no job called \"crank\"; list them: list the jobs");
        assertThatThrownBy(() -> jobs.archive("crank", true)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> jobs.line("crank")).isInstanceOf(Refused.class);
    }

    @Test
    void whatCantBeEnteredChangesNothing() {
        Hunt hunt = jobs.begin(JobSamples.fresh("speedometer"));
        JobLine before = jobs.line("speedometer");
        assertThatThrownBy(() -> jobs.add(hunt, NOON, new Entry.PinMeasured(new Place(false, 0), 0.1)))
                .isInstanceOf(Refused.class);
        assertThat(jobs.line("speedometer")).isEqualTo(before);
        assertThat(jobs.find("speedometer").events()).isEmpty();
    }

    @Test
    void theSecondOfTwoThatGoOnWithAJobIsRefused() {
        Hunt begun = jobs.begin(JobSamples.fresh("speedometer"));
        try (Store other = Store.open(folder.resolve("understudy.db"))) {
            Hunt theirs = other.jobs().add(Hunt.of(other.jobs().find("speedometer")), NOON, new Entry.Noted("theirs"));
            assertThatThrownBy(() -> jobs.add(begun, NOON, new Entry.Noted("ours"))).isInstanceOfSatisfying(Refused.class,
                    refusal -> assertThat(refusal.mend()).isEqualTo(Refused.Mend.SETUP))
                    .hasMessage("another Understudy went on with job \"speedometer\"; what you entered last was not kept; resume"
                            + " the job and enter it again");
            assertThat(jobs.find("speedometer")).isEqualTo(theirs.job());
            Hunt resumed = jobs.add(Hunt.of(jobs.find("speedometer")), NOON, new Entry.Noted("ours"));
            assertThat(resumed.job().events()).extracting(Job.Event::entry)
                    .containsExactly(new Entry.Noted("theirs"), new Entry.Noted("ours"));
            other.jobs().remove("speedometer");
            assertThatThrownBy(() -> jobs.add(resumed, NOON, new Entry.Noted("more"))).hasMessage(
                    "another Understudy removed job \"speedometer\"; what you entered last was not kept");
        }
    }

    @Test
    void aJobThatTookTheNameOfARemovedOneIsNotGoneOnWith() {
        Hunt old = jobs.begin(JobSamples.fresh("speedometer"));
        jobs.remove("speedometer");
        Job like = old.job();
        jobs.begin(new Job(like.name(), NOON.plusMillis(1), "another", "", "", like.suspect(), like.reference(), like.equipment(),
                List.of()));
        assertThatThrownBy(() -> jobs.add(old, NOON, cautioned(old))).isInstanceOf(Refused.class);
        assertThat(jobs.find("speedometer").events()).isEmpty();
    }

    @Test
    void aListTellsHowAJobStands() {
        Hunt hunt = jobs.begin(JobSamples.fresh("speedometer"));
        assertThat(jobs.line("speedometer")).isEqualTo(new JobLine("speedometer", NOON, "Fieldhand 4, bench",
                "drops to zero on rough ground", "the instructor", "Speedometer signal, gearbox to module", 0, "begun", false, false,
                NOON));
        hunt = jobs.add(hunt, NOON.plusSeconds(5), cautioned(hunt));
        JobLine line = jobs.line("speedometer");
        assertThat(line.state()).isEqualTo("proving the method");
        assertThat(line.events()).isEqualTo(1);
        assertThat(line.changed()).isEqualTo(NOON.plusSeconds(5));
        jobs.add(hunt, NOON.plusSeconds(6), new Entry.Closed("sold", Optional.empty()));
        assertThat(jobs.line("speedometer").closed()).isTrue();
        // the sensor's side has the odds 2 of 2 + 2 + 9 + 6 + 4 + 1, the tunnel connector 9: the likeliest, far from 95 %
        assertThat(jobs.line("speedometer").state()).isEqualTo(
                "closed, none convicted, likeliest: connector \"tunnel connector and tunnel harness\"");
    }

    @Test
    void whatIsArchivedIsListedApartUntilSomebodyGoesOnWithIt() {
        Hunt hunt = jobs.begin(JobSamples.fresh("speedometer"));
        jobs.begin(JobSamples.fresh("wheel"));
        jobs.archive("Speedometer", true);
        assertThat(jobs.list(false)).extracting(JobLine::name).containsExactly("wheel");
        assertThat(jobs.list(true)).filteredOn(JobLine::archived).extracting(JobLine::name).containsExactly("speedometer");
        assertThat(jobs.list(true)).hasSize(2);
        assertThat(jobs.search("rough", true, 10)).hasSize(2);
        assertThat(jobs.count("rough", false)).isEqualTo(1);
        assertThat(jobs.has("SPEEDOMETER")).isTrue();
        assertThat(jobs.find("speedometer")).isEqualTo(hunt.job());
        jobs.archive("speedometer", false);
        assertThat(jobs.list(false)).hasSize(2);
        jobs.archive("speedometer", true);
        jobs.add(hunt, NOON, new Entry.Noted("again"));
        assertThat(jobs.list(false)).hasSize(2);
    }

    @Test
    void aRemovedJobLeavesNothingBehind() throws SQLException {
        jobs.begin(JobSamples.random("gone", 3, 40).job());
        jobs.remove("GONE");
        try (Statement statement = store.connection.createStatement()) {
            for (String table : List.of("job", "job_equipment", "job_file", "job_event", "job_event_value")) {
                assertThat(statement.executeQuery("SELECT count(*) FROM " + table).getInt(1)).as(table).isZero();
            }
        }
        jobs.begin(JobSamples.fresh("gone"));
    }

    @Test
    void wordsAreFoundWhateverTheirCaseAndOrder() {
        Hunt hunt = jobs.begin(JobSamples.fresh("speedometer"));
        jobs.add(hunt, NOON, new Entry.Noted("Stecker GRÖSSER als 5 %; siehe „Öse“"));
        for (String words : List.of("", "bench INSTRUCTOR", "größer", "öSE speedo", "5 %", "ground rough")) {
            assertThat(jobs.search(words, false, 10)).as(words).hasSize(1);
        }
        for (String words : List.of("rough smooth", "5%;", "_", "benchdrops", "bench\ndropsx")) {
            assertThat(jobs.search(words, false, 10)).as(words).isEmpty();
        }
    }

    @Test
    void aFullDiskLosesNoEntry() throws SQLException {
        Hunt hunt = jobs.begin(JobSamples.fresh("speedometer"));
        try (Statement statement = store.connection.createStatement()) {
            statement.execute("PRAGMA max_page_count = " + statement.executeQuery("PRAGMA page_count").getInt(1));
            Entry large = new Entry.Noted("x".repeat(100_000));
            assertThatThrownBy(() -> jobs.add(hunt, NOON, large)).isInstanceOf(Refused.class)
                    .hasMessageEndingWith(": the disk is full; nothing was changed; make room, then do it again");
            assertThatThrownBy(() -> jobs.begin(new Job("large", NOON, "x".repeat(100_000), "", "", hunt.job().suspect(),
                    Optional.empty(), hunt.job().equipment(), List.of()))).isInstanceOf(Refused.class);
            assertThat(jobs.find("speedometer")).isEqualTo(hunt.job());
            assertThat(jobs.list(false)).hasSize(1);
            statement.execute("PRAGMA max_page_count = 100000");
            jobs.add(hunt, NOON, large);
            assertThat(jobs.find("speedometer").events()).hasSize(1);
        }
    }

    @Test
    void aFileThatMayNotBeWrittenIsStillRead() {
        Hunt hunt = jobs.begin(JobSamples.fresh("speedometer"));
        try (Store reading = Store.openToRead(folder.resolve("understudy.db"))) {
            assertThat(reading.jobs().find("speedometer")).isEqualTo(hunt.job());
            assertThat(reading.jobs().list(false)).hasSize(1);
            assertThatThrownBy(() -> reading.jobs().add(hunt, NOON, cautioned(hunt))).isInstanceOf(Refused.class)
                    .hasMessageContaining("may not be written; nothing was changed");
        }
    }

    /** As the first layout left it: a file with rigs and no jobs. */
    @Test
    void aFileOfAnOlderVersionKeepsWhatItHas() throws SQLException {
        store.rigs().make(Samples.straight("bench"));
        try (Statement statement = store.connection.createStatement()) {
            for (String table : List.of("job_event_value", "job_event", "job_file", "job_equipment", "job", "learned_scale")) {
                statement.executeUpdate("DROP TABLE " + table);
            }
            statement.execute("PRAGMA user_version = 1");
        }
        store.close();
        open();
        assertThat(store.rigs().find("bench")).isEqualTo(Samples.straight("bench"));
        jobs.begin(JobSamples.fresh("speedometer"));
        assertThat(jobs.list(false)).hasSize(1);
    }

    @Test
    void circuitsThatCantBeReadBeginNoJob() {
        Job job = JobSamples.fresh("speedometer");
        Job.Subject broken = new Job.Subject(new Source("c.yaml", "title: x"), job.suspect().pattern());
        assertThatThrownBy(() -> jobs.begin(new Job("broken", NOON, "", "", "", broken, Optional.empty(), job.equipment(), List.of())))
                .isInstanceOf(Refused.class).hasMessageStartingWith("c.yaml:1:1: ");
        assertThat(jobs.list(false)).isEmpty();
    }
}
