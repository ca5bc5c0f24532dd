package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.FastStart;
import understudy.store.Store;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.NextStep;

/** The whole command in a process of its own, ended from outside. */
@Tag("real-time")
class TraceCrashTest {

    /** What is printed only after an entry is on the disk: a pin that was judged, a step with its number, the end. */
    private static final Pattern ACKNOWLEDGED = Pattern.compile("(?m)^(Allowed:|Step \\d+, |Closed\\.)");
    private static final int KILLS = 30;
    /** A hunt lasts some 3 s from its first word on. */
    private static final int LATEST_MILLIS = 1500;

    private static FastStart commands;

    @TempDir
    private Path home;

    @BeforeAll
    static void packCommands(@TempDir Path folder) throws Exception {
        commands = FastStart.of(Main.class, folder, "trace", "fieldhand-4-speedometer", "--to", "silent",
                "--job", "training", "--vehicle", "v", "--complaint", "c", "--who", "w");
    }

    private Process start(String... args) throws IOException {
        List<String> words = new ArrayList<>(List.of("trace"));
        words.addAll(List.of(args));
        words.addAll(List.of("--to", "silent"));
        ProcessBuilder builder = commands.with(words.toArray(String[]::new)).redirectError(ProcessBuilder.Redirect.DISCARD);
        // a test run in the background may have been told to ignore interrupts, and would pass that on
        builder.command().addAll(0, List.of("env", "--default-signal"));
        builder.environment().put("XDG_DATA_HOME", home.resolve(".local/share").toString());
        return builder.start();
    }

    private Hunt kept(String name) {
        try (Store store = Run.in(home).store()) {
            return Hunt.of(store.jobs().find(name));
        }
    }

    private static long acknowledged(String screen) {
        return ACKNOWLEDGED.matcher(screen).results().count();
    }

    @Test
    void whatWasAcknowledgedOutlivesBeingKilledAtAnyMoment() throws Exception {
        Random random = new Random(4);
        int jobs = 0;
        long most = 0;
        String job = null;
        for (int kill = 0; kill < KILLS; kill++) {
            boolean fresh = job == null || kept(job).next() instanceof NextStep.Ended;
            if (fresh) {
                job = "job " + ++jobs;
                // begun and cautioned in good order, so that there is something to lose
                Run.in(home).piping("yes\n".repeat(9)).understudy("trace", "fieldhand-4-speedometer", "--to", "silent",
                        "--job", job, "--vehicle", "v", "--complaint", "c", "--who", "w");
            }
            int before = kept(job).events().size();
            Process trace = start("--resume", job);
            int wait = random.nextInt(LATEST_MILLIS);
            boolean repaired = kept(job).standing().stream().anyMatch(event -> event.entry() instanceof Entry.Repaired);
            long acknowledged = acknowledged(new TraceBench(home, TraceCommandTest.POINTS, 2).repaired(repaired).at(trace,
                    () -> CompletableFuture.delayedExecutor(wait, TimeUnit.MILLISECONDS).execute(trace::destroyForcibly)));
            most = Math.max(most, acknowledged);
            // the repair is acknowledged by what is asked next, and one more may have reached the disk before it was said
            assertThat(kept(job).events().size() - before).as("kill %d after %d ms", kill, wait)
                    .isBetween((int) acknowledged, (int) acknowledged + 2);
        }
        assertThat(most).as("kills that came late enough to lose something").isGreaterThan(2);
    }

    @Test
    void anInterruptIsSilentAtOnceAndKeepsTheJob() throws Exception {
        for (String signal : new String[] {"INT", "TERM"}) {
            Process trace = start("fieldhand-4-speedometer", "--job", signal, "--vehicle", "v", "--complaint", "c", "--who", "w");
            Writer keys = trace.outputWriter(StandardCharsets.UTF_8);
            keys.write("yes\n".repeat(9) + "0.1\n\n");
            keys.flush(); // and stays open: somebody sits there
            Reader screen = trace.inputReader(StandardCharsets.UTF_8);
            StringBuilder shown = new StringBuilder();
            while (shown.indexOf("What does the display show") < 0) {
                shown.append((char) screen.read());
            }
            new ProcessBuilder("kill", "-" + signal, "" + trace.pid()).start().waitFor();
            if (!trace.waitFor(20, TimeUnit.SECONDS)) {
                trace.destroyForcibly();
                throw new AssertionError(signal + " did not end it");
            }
            assertThat(trace.exitValue()).isZero();
            StringWriter rest = new StringWriter();
            screen.transferTo(rest);
            assertThat(rest.toString()).endsWith("\nNothing plays, and the job is kept. Go on with:\n"
                    + "  understudy trace --resume \"" + signal + "\" --to silent\n");
            assertThat(kept(signal).events()).as("cautions and pin").hasSize(2);
        }
    }
}
