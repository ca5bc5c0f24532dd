package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import understudy.cli.terminal.Surroundings;

/**
 * A wheel and a display that tests sweep, in silence. The wheel has 4 positions: 600 rpm, 10 turns a second, are 40 Hz. 7200 pulses a km
 * make 3600 / 7200 = 0.5 km/h for each Hz: 40 Hz are 20 km/h.
 */
abstract class SweepBench {

    static final String DISPLAY = "shows: vehicle speed, unit: km/h, pulses-per-km: 7200, tolerance: 10 %, step: 1 km/h";

    @TempDir
    Path home;

    String wheel;

    @BeforeEach
    void writeWheel() throws IOException {
        wheel = Samples.write(home, "wheel.yaml", Samples.WHEEL).toString();
    }

    String[] sweep(String... more) {
        return Stream.concat(Stream.of("sweep", wheel, "--reading", DISPLAY, "--to", "silent", "--ramp", "0 s", "--dwell", "0 s"),
                Arrays.stream(more)).toArray(String[]::new);
    }

    String fine(String typed, String... args) {
        Run.Outcome outcome = Run.in(home).piping(typed).understudy(args);
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.exitCode()).isZero();
        return outcome.out();
    }

    /** However it was broken into lines. */
    static String words(String out) {
        return out.replaceAll("\\s+", " ");
    }

    String file(String name) {
        return home.resolve(name).toString();
    }

    List<String> ownFiles() throws IOException {
        Path folder = Run.in(home).folders().data().resolve("sweeps");
        if (!Files.exists(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    /** Types a line when a prompt stands there, after having looked round. */
    private static final class Looking extends BufferedReader {
        private static final Pattern PROMPT = Pattern.compile("(Displayed, in km/h|Enter or stop): ");
        private final StringWriter screen;
        private final List<String> lines;
        private final Runnable[] looks;
        private int typed;

        Looking(StringWriter screen, List<String> lines, Runnable... looks) {
            super(Reader.nullReader());
            this.screen = screen;
            this.lines = lines;
            this.looks = looks;
        }

        @Override
        public String readLine() throws IOException {
            if (typed == lines.size()) {
                return null;
            }
            try {
                while (PROMPT.matcher(screen.toString()).results().count() <= typed) {
                    Thread.sleep(5);
                }
            } catch (InterruptedException e) {
                throw new IOException(e);
            }
            looks[typed].run();
            return lines.get(typed++);
        }
    }

    String looking(List<String> lines, Runnable[] looks, String... args) {
        StringWriter screen = new StringWriter();
        StringWriter err = new StringWriter();
        Surroundings bare = Run.in(home).surroundings(new PrintWriter(screen), new PrintWriter(err));
        assertThat(Main.run(new Surroundings(bare.out(), bare.err(), new Looking(screen, lines, looks), bare.charset(), bare.env(),
                bare.folders(), bare.clock(), false, bare.terminals()), args)).as(err.toString()).isZero();
        return screen.toString();
    }
}
