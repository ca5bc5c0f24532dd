package understudy.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Job;

/** Ten thousand jobs, with all that happened in them, are listed and searched while one waits. */
class ManyJobsTest {

    private static final int HUNTED = 100;
    private static final int WRITTEN = 1000;
    private static final int COPIES = 9;
    private static final int JOBS = WRITTEN * (COPIES + 1);
    private static final int LEAST_EVENTS = 8;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    /** What is asked for, even of all ten thousand at once; the command shows some fifty. */
    private static final double MOST_MILLIS = 200;

    @TempDir
    private static Path folder;

    private static Store store;
    private static final List<Job> KEPT = new ArrayList<>();

    @BeforeAll
    static void fill() {
        List<Hunt> hunts = new ArrayList<>();
        for (long seed = 0; hunts.size() < HUNTED; seed++) {
            Hunt hunt = JobSamples.random("hunt", seed, 40);
            if (hunt.job().events().size() >= LEAST_EVENTS) {
                hunts.add(hunt);
            }
        }
        store = Store.open(folder.resolve("understudy.db"));
        store.write(on -> {
            for (int i = 0; i < WRITTEN; i++) {
                Hunt hunt = hunts.get(i % HUNTED);
                Job like = hunt.job();
                Job job = new Job("Job " + i, like.begun(), "Fieldhand 4, no. " + i % 97, like.complaint(), like.who(), like.suspect(),
                        like.reference(), like.equipment(), like.events());
                JobRows.insert(on, job, hunt.circuit().title(), JobState.of(hunt));
                KEPT.add(job);
            }
            for (int copy = 1; copy <= COPIES; copy++) {
                copy(on.createStatement(), copy);
            }
            return null;
        });
    }

    /** Row by row in SQL, since ten times as many by the front door would take a minute. */
    private static void copy(Statement statement, int copy) throws SQLException {
        String id = " + " + copy * WRITTEN;
        String first = " WHERE %s <= " + WRITTEN;
        String mark = " || '." + copy + "'";
        statement.executeUpdate("INSERT INTO job SELECT id" + id + ", name" + mark + ", name_key" + mark + ", begun, vehicle, complaint,"
                + " who, rig, input, pin_from_volts, pin_to_volts, archived, circuit_title, events, state, closed, changed, search_text"
                + mark + " FROM job" + first.formatted("id") + " ORDER BY id");
        for (String table : List.of("job_equipment", "job_file", "job_event", "job_event_value")) {
            List<String> columns = new ArrayList<>();
            try (var row = statement.executeQuery("SELECT name FROM pragma_table_info('" + table + "')")) {
                while (row.next()) {
                    columns.add(row.getString(1).equals("job_id") ? "job_id" + id : row.getString(1));
                }
            }
            statement.executeUpdate("INSERT INTO " + table + " SELECT " + String.join(", ", columns) + " FROM " + table
                    + first.formatted("job_id"));
        }
        for (int i = 0; i < WRITTEN; i++) {
            Job like = KEPT.get(i);
            KEPT.add(new Job(like.name() + "." + copy, like.begun(), like.vehicle(), like.complaint(), like.who(), like.suspect(),
                    like.reference(), like.equipment(), like.events()));
        }
        statement.close();
    }

    @AfterAll
    static void close() {
        store.close();
    }

    /**
     * The middle one of some tries, each with a store that was just opened. It is this thread's own time, SQLite's work
     * included, since what else the machine does meanwhile is no property of the store.
     */
    private static <T> T timed(String what, Function<Jobs, T> asked) {
        double[] millis = new double[7];
        T answer = null;
        for (int i = 0; i < millis.length; i++) {
            try (Store opened = Store.open(folder.resolve("understudy.db"))) {
                long begin = THREADS.getCurrentThreadCpuTime();
                answer = asked.apply(opened.jobs());
                millis[i] = (THREADS.getCurrentThreadCpuTime() - begin) / 1e6;
            }
        }
        Arrays.sort(millis);
        assertThat(millis[millis.length / 2]).as(what).isLessThan(MOST_MILLIS);
        return answer;
    }

    @Test
    void thereAreSoManyAndEachComesBackWhole() {
        assertThat(KEPT).hasSize(JOBS);
        assertThat(KEPT.stream().mapToInt(job -> job.events().size()).average().orElseThrow()).isGreaterThan(15);
        for (int i = 0; i < JOBS; i += 613) {
            assertThat(store.jobs().find(KEPT.get(i).name())).isEqualTo(KEPT.get(i));
        }
    }

    @Test
    void allAreListedTheLatestFirst() {
        List<JobLine> lines = timed("list", jobs -> jobs.list(false));
        assertThat(lines).hasSize(JOBS).isSortedAccordingTo(Comparator.comparing(JobLine::changed).reversed());
        List<JobLine> latest = timed("the latest 50", jobs -> jobs.search("", false, 50));
        assertThat(latest).isEqualTo(lines.subList(0, 50));
    }

    @ParameterizedTest
    @ValueSource(strings = {"FIELDHAND no. 13", "no. 13 grÖße", "ὀδυσσεύς", "speedometer", "nowhere", "4"})
    void whatIsSearchedIsWhatHoldsEveryWord(String words) {
        List<String> brute = KEPT.stream().filter(job -> holds(job, words.split(" "))).map(Job::name).sorted().toList();
        List<JobLine> found = timed("\"" + words + "\" found " + brute.size() + " times", jobs -> jobs.search(words, false, JOBS));
        assertThat(found.stream().map(JobLine::name).sorted().toList()).isEqualTo(brute);
        int count = timed("its count", jobs -> jobs.count(words, false));
        assertThat(count).isEqualTo(brute.size());
    }

    /** By plain comparison of every stretch of the texts, without the case of letters. */
    private static boolean holds(Job job, String... words) {
        List<String> texts = new ArrayList<>(List.of(job.name(), job.vehicle(), job.complaint(), job.who(),
                job.suspect().circuit().text().lines().filter(line -> line.startsWith("title:")).findFirst().orElseThrow().substring(7)));
        for (Job.Event event : job.events()) {
            Entry entry = event.entry();
            if (entry instanceof Entry.Noted noted) {
                texts.add(noted.words());
            } else if (entry instanceof Entry.Repaired repaired) {
                texts.add(repaired.words());
            } else if (entry instanceof Entry.Closed closed) {
                texts.add(closed.words());
            } else if (entry instanceof Entry.WentOn wentOn) {
                texts.add(wentOn.reason());
            } else if (entry instanceof Entry.Withdrawn withdrawn) {
                texts.add(withdrawn.reason());
            } else if (entry instanceof Entry.Proven proven) {
                texts.add(proven.how());
            }
        }
        return Arrays.stream(words).allMatch(word -> texts.stream().anyMatch(text -> contains(text, word)));
    }

    private static boolean contains(String text, String word) {
        for (int at = 0; at + word.length() <= text.length(); at++) {
            if (text.regionMatches(true, at, word, 0, word.length())) {
                return true;
            }
        }
        return false;
    }
}
