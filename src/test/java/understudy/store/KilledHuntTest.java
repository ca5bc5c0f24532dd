package understudy.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.FastStart;
import understudy.trace.Entry;
import understudy.trace.EntryText;
import understudy.trace.Hunt;
import understudy.trace.Job;

/** A hunt whose process is killed at any moment, again and again, loses nothing that it said was kept, and goes on. */
class KilledHuntTest {

    private static final int KILLS = 200;
    /** As many at a time as there are cores in a small machine, each with a database of its own. */
    private static final int LANES = 2;
    private static final int MOST_EVENTS = 40;
    /** What was kept long ago is read again after so many kills, and at the end. */
    private static final int ALL_EVERY = 20;

    @TempDir
    private Path folder;

    /** Goes on with the latest job, or begins one, and says what is kept once it is, until it is killed, or has done so many things. */
    static final class Hunter {

        public static void main(String[] args) {
            Random random = new Random(Long.parseLong(args[1]));
            try (Store store = Store.open(Path.of(args[0]))) {
                Jobs jobs = store.jobs();
                int count = jobs.count("", false);
                Hunt hunt = count == 0 ? begin(jobs, ++count) : Hunt.of(jobs.find("job " + count));
                for (long left = args.length > 2 ? Long.parseLong(args[2]) : Long.MAX_VALUE; left > 0; left--) {
                    if (hunt.job().events().size() >= MOST_EVENTS) {
                        hunt = begin(jobs, ++count);
                    }
                    Entry entry = JobSamples.next(hunt, random.nextLong());
                    hunt = jobs.add(hunt, JobSamples.NOON.plusNanos(random.nextInt()), entry);
                    int number = hunt.job().events().size();
                    System.out.println(count + " " + number + " " + mark(hunt.job().events().get(number - 1)) + ".");
                }
            }
        }

        private static Hunt begin(Jobs jobs, int count) {
            Hunt hunt = jobs.begin(JobSamples.fresh("job " + count));
            System.out.println(count + " 0 begun.");
            return hunt;
        }
    }

    /** Tells events apart, in any process alike. */
    private static String mark(Job.Event event) {
        EntryText text = EntryText.of(event.entry());
        return text.kind() + " " + (event.at() + new TreeMap<>(text.values()).toString()).hashCode();
    }

    @Test
    void nothingIsLostThatWasSaidToBeKept() throws Exception {
        FastStart hunters = FastStart.of(Hunter.class, folder, folder.resolve("training.db").toString(), "1", "9");
        ExecutorService lanes = Executors.newFixedThreadPool(LANES);
        try {
            List<Future<Integer>> kept = new ArrayList<>();
            for (int lane = 0; lane < LANES; lane++) {
                Path file = folder.resolve("lane-" + lane + ".db");
                Random random = new Random(20260301 + lane);
                kept.add(lanes.submit(() -> kill(hunters, file, random, KILLS / LANES)));
            }
            for (Future<Integer> one : kept) {
                assertThat(one.get()).as("it went on between the kills").isGreaterThan(2 * KILLS / LANES);
            }
        } finally {
            lanes.shutdownNow();
        }
    }

    /** Kills one hunter after the other on one database. @return how many events were kept in the end */
    private static int kill(FastStart hunters, Path file, Random random, int kills) throws Exception {
        Map<Integer, List<String>> said = new HashMap<>(); // by job: the marks of its events
        int kept = 0;
        for (int kill = 0; kill < kills; kill++) {
            Process hunter = hunters.with(file.toString(), Long.toString(random.nextLong()))
                    .redirectError(ProcessBuilder.Redirect.INHERIT).start();
            BufferedReader lines = hunter.inputReader();
            // some die while they open the file, or make it; most in the midst of their work
            int after = random.nextInt(8);
            for (int i = 0; i < after; i++) {
                take(lines.readLine(), said);
            }
            TimeUnit.MICROSECONDS.sleep(after == 0 ? random.nextInt(300_000) : random.nextInt(5_000));
            hunter.toHandle().destroyForcibly(); // not by the process itself, which would throw away what it still said
            assertThat(hunter.waitFor(20, TimeUnit.SECONDS)).isTrue();
            for (String line = lines.readLine(); line != null && line.endsWith("."); line = lines.readLine()) {
                take(line, said);
            }
            kept = check(file, said, kill % ALL_EVERY == ALL_EVERY - 1 || kill == kills - 1);
        }
        return kept;
    }

    private static void take(String line, Map<Integer, List<String>> said) {
        String[] words = line.replace(".", "").split(" ", 3);
        List<String> marks = said.computeIfAbsent(Integer.parseInt(words[0]), job -> new ArrayList<>());
        int number = Integer.parseInt(words[1]);
        if (number > 0) {
            // an event that was kept but not said to be is missing here
            while (marks.size() < number - 1) {
                marks.add("");
            }
            marks.add(words[2]);
            assertThat(marks).hasSize(number);
        }
    }

    /**
     * Reads every job, or those that the last hunter may have touched: it began with the latest, and may have begun others.
     *
     * @return how many events of them are kept
     */
    private static int check(Path file, Map<Integer, List<String>> said, boolean all) throws SQLException, IOException {
        int kept = 0;
        try (Store store = Store.open(file); Statement statement = store.connection.createStatement()) {
            assertThat(statement.executeQuery("PRAGMA integrity_check").getString(1)).isEqualTo("ok");
            assertThat(store.jobs().count("", false)).isBetween(said.size(), said.size() + 1);
            for (Map.Entry<Integer, List<String>> job : said.entrySet()) {
                if (!all && job.getKey() < said.size() - 1) {
                    continue;
                }
                List<Job.Event> events = store.jobs().find("job " + job.getKey()).events();
                List<String> marks = job.getValue();
                assertThat(events).as("job " + job.getKey()).hasSizeBetween(marks.size(), marks.size() + 1);
                for (int i = 0; i < marks.size(); i++) {
                    assertThat(marks.get(i)).isIn("", mark(events.get(i)));
                }
                assertThat(store.jobs().line("job " + job.getKey()).events()).isEqualTo(events.size());
                kept += events.size();
            }
            if (!said.isEmpty()) {
                Hunt.of(store.jobs().find("job " + said.size())).next();
            }
        }
        return kept;
    }
}
