package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.store.LearnedScale;
import understudy.store.Store;

/**
 * Sweeps that are rehearsed in silence. The wheel has 4 positions: 600 rpm, 10 turns a second, are 40 Hz. 7200 pulses a km
 * make 3600 / 7200 = 0.5 km/h for each Hz: 40 Hz are 20 km/h.
 */
class SweepCommandTest {

    private static final String DISPLAY = "shows: vehicle speed, unit: km/h, pulses-per-km: 7200, tolerance: 10 %, step: 1 km/h";

    @TempDir
    private Path home;

    private String wheel;

    @BeforeEach
    void writeWheel() throws IOException {
        wheel = Samples.write(home, "wheel.yaml", Samples.WHEEL).toString();
    }

    private String[] sweep(String... more) {
        return Stream.concat(Stream.of("sweep", wheel, "--reading", DISPLAY, "--to", "silent", "--ramp", "0 s", "--dwell", "0 s"),
                Arrays.stream(more)).toArray(String[]::new);
    }

    private String fine(String typed, String... args) {
        Run.Outcome outcome = Run.in(home).piping(typed).understudy(args);
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.exitCode()).isZero();
        return outcome.out();
    }

    /** However it was broken into lines. */
    private static String words(String out) {
        return out.replaceAll("\\s+", " ");
    }

    private String file(String name) {
        return home.resolve(name).toString();
    }

    private List<String> ownFiles() throws IOException {
        Path folder = Run.in(home).folders().data().resolve("sweeps");
        if (!Files.exists(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void eachSpeedIsToldAskedForAndJudged() {
        // 60 km/h: half of it is 30, where 60 - 10 % - half a step begins at 53.5
        String out = fine("20\n42\n30\n", sweep("--speeds", "600, 1200, 1800 rpm"));
        assertThat(out).contains("""
                Step 1 of 3: 600 rpm, 40 Hz; expected: 20 km/h, good from 18 to 22
                Displayed, in km/h: 20
                Right.

                Step 2 of 3: 1200 rpm, 80 Hz; expected: 40 km/h, good from 36 to 44
                Displayed, in km/h: 42
                Right.

                Step 3 of 3: 1800 rpm, 120 Hz; expected: 60 km/h, good from 54 to 66
                Displayed, in km/h: 30
                Not right: 30 km/h is shown; expected: 60 km/h, good from 54 to 66; half as
                much, as if every other tooth were lost, or twice the teeth declared.

                Step  Speed     Frequency  Expected  Displayed  Off by             Verdict
                1     600 rpm   40 Hz      20 km/h   20 km/h    0 km/h    0.0 %    right
                2     1200 rpm  80 Hz      40 km/h   42 km/h    +2 km/h   +5.0 %   right
                3     1800 rpm  120 Hz     60 km/h   30 km/h    -30 km/h  -50.0 %  half

                The module reads right from 600 rpm, 40 Hz, to 1200 rpm, 80 Hz (2 readings).
                Above, at 1800 rpm, 120 Hz, the verdict is: half.
                """);
    }

    @Test
    void whatIsNoNumberHasItsWords() throws IOException {
        String out = fine("nothing\n\nerratic\nstop\n", sweep("--speeds", "600 to 3000 by 600 rpm", "--csv", file("log.csv")));
        assertThat(out).contains("""
                Step  Speed     Frequency  Expected  Displayed  Off by             Verdict
                1     600 rpm   40 Hz      20 km/h   nothing    -20 km/h  -100.0 %  nothing
                2     1200 rpm  80 Hz      40 km/h   -          -         -         skipped
                3     1800 rpm  120 Hz     60 km/h   erratic    -         -         erratic
                """.replace("Off by             Verdict", "Off by              Verdict"))
                .contains("The module reads right at none of these speeds.")
                .contains("No scale can be learned: that takes two different numbers, at two different\nspeeds.")
                .contains("Not read: 2 of 5 speeds. To go on, give the same command once more, with:\n"
                        + "  --resume --csv \"" + file("log.csv") + "\"\n");
        // good from 17.5 to 22.5: the whole numbers in between are 18 to 22
        assertThat(Path.of(file("log.csv"))).hasContent("""
                step,time,speed (rpm),frequency (Hz),expected (km/h),good from (km/h),good to (km/h),displayed (km/h),deviation (km/h),deviation (%),verdict
                1,2026-03-01T12:00:00Z,600,40,20,18,22,nothing,-20,-100,nothing
                2,2026-03-01T12:00:00Z,1200,80,40,36,44,,,,skipped
                3,2026-03-01T12:00:00Z,1800,120,60,54,66,erratic,,,erratic
                """);
    }

    @Test
    void aSlipOfTheFingerIsAskedAgain() throws IOException {
        String out = fine("200\nno\n20 rpm\ntwenty\n12.4 mph\n40\n", sweep("--speeds", "600, 1200 rpm", "--csv", file("log.csv")));
        assertThat(out).contains("Is it 200 km/h, and not 20 km/h? yes or no: no\n").contains("\"twenty\" is not a road speed; write")
                .contains("12.4 mph is 19.96 km/h.");
        // 12.4 x 1.609344
        assertThat(Files.readAllLines(home.resolve("log.csv")).get(1)).startsWith("1,2026-03-01T12:00:00Z,600,40,20,18,22,19.9558656,");
    }

    @Test
    void backReadsTheLastOneOnceMore() {
        String out = fine("back\n20\n4\nback\n40\n60\n", sweep("--speeds", "600, 1200, 1800 rpm"));
        assertThat(out).contains("This is the first speed.\n").containsOnlyOnce("Step 1 of 3").contains("""
                1     600 rpm   40 Hz      20 km/h   20 km/h    0 km/h  0.0 %  right
                2     1200 rpm  80 Hz      40 km/h   40 km/h    0 km/h  0.0 %  right
                3     1800 rpm  120 Hz     60 km/h   60 km/h    0 km/h  0.0 %  right
                """);
        assertThat(words(out)).contains("to 1800 rpm, 120 Hz: at every speed that was read (3 readings).");
    }

    @Test
    void aDisplayThatLagsIsFoundOnTheWayBack() throws IOException {
        // 2 less than the truth on the way up, 2 more on the way down
        String out = fine("18\n38\n58\n80\n62\n42\n22\n", sweep("--speeds", "600 to 2400 by 600 rpm", "--return", "--json", file("all.json")));
        assertThat(out).contains("It averages: wait until it stands").contains("after going faster, km/h").contains("after going slower, km/h");
        Map<String, Object> json = JSON.std.mapFrom(Files.readString(home.resolve("all.json")));
        assertThat((List<?>) json.get("rows")).hasSize(7);
        assertThat(json).containsEntry("rightFrom", 600).containsEntry("rightTo", 2400).containsEntry("of", "wheel");
        // the truth, 0.5 km/h for each Hz, within the limits
        Map<?, ?> perHz = (Map<?, ?>) ((Map<?, ?>) json.get("learned")).get("perHz");
        assertThat(((Number) perHz.get("low")).doubleValue()).isLessThan(0.5);
        assertThat(((Number) perHz.get("high")).doubleValue()).isGreaterThan(0.5);
    }

    @Test
    void aDrawingInsteadOfTheOneOnTheScreen() {
        String out = fine("20\n42\n", sweep("--speeds", "600, 1200 rpm", "--plot", file("off.svg")));
        assertThat(out).contains("Drawn in").doesNotContain("displayed less expected");
        assertThat(home.resolve("off.svg")).isNotEmptyFile();
        assertThat(fine("20\n42\n", sweep("--speeds", "600, 1200 rpm"))).contains("displayed less expected, km/h");
        assertThat(fine("20\n", sweep("--speeds", "600, 1200 rpm", "--plot", file("none.svg")))).contains("Too little was read to draw");
        assertThat(home.resolve("none.svg")).doesNotExist();
    }

    @Test
    void aSweepGoesOnWhereItStood() throws IOException {
        fine("20\n\n", sweep("--speeds", "600, 1200, 1800 rpm", "--csv", file("log.csv")));
        String out = fine("60\n", sweep("--speeds", "600, 1200, 1800 rpm", "--csv", file("log.csv"), "--resume"));
        assertThat(out).containsOnlyOnce("Step 3 of 3").doesNotContain("Step 2 of 3").contains("1     600 rpm");
        assertThat(Files.readAllLines(home.resolve("log.csv"))).hasSize(4);
    }

    @Test
    void aSweepGoesOnOnlyAsItBegan() throws IOException {
        fine("20\n40\n", sweep("--speeds", "600, 1200, 1800 rpm", "--csv", file("log.csv")));
        String before = Files.readString(home.resolve("log.csv"));
        Run.Outcome others = Run.in(home).understudy(sweep("--speeds", "600, 1300 rpm", "--csv", file("log.csv"), "--resume"));
        assertThat(others.exitCode()).isEqualTo(Main.BAD_INPUT);
        assertThat(others.err()).isEqualTo(file("log.csv") + ":3: this row does not belong to the speeds, or the reading, of this sweep;"
                + " give the same as when it was begun\n");
        Run.Outcome overwritten = Run.in(home).understudy(sweep("--speeds", "600, 1200 rpm", "--csv", file("log.csv")));
        assertThat(overwritten.err()).isEqualTo("--csv: " + file("log.csv") + " is there already; give another name, or go on with that"
                + " sweep with --resume\n");
        Files.writeString(home.resolve("other.csv"), "a,b\n1,2\n");
        assertThat(Run.in(home).understudy(sweep("--speeds", "600, 1200 rpm", "--csv", file("other.csv"), "--resume")).err())
                .startsWith("--resume: " + file("other.csv") + " holds no sweep of this circuit and display; ");
        Run.Outcome missing = Run.in(home).understudy(sweep("--speeds", "600, 1200 rpm", "--csv", file("none.csv"), "--resume"));
        assertThat(missing.exitCode()).isEqualTo(Main.BAD_INPUT);
        assertThat(missing.err()).contains("none.csv");
        assertThat(Files.readString(home.resolve("log.csv"))).isEqualTo(before);
    }

    @Test
    void theRowsAreKeptWithoutBeingAskedFor() throws IOException {
        fine("20\n", sweep("--speeds", "600, 1200 rpm"));
        fine("20\n", sweep("--speeds", "600, 1200 rpm"));
        fine("stop\n", sweep("--speeds", "600, 1200 rpm"));
        assertThat(ownFiles()).containsExactly("wheel-20260301-120000-2.csv", "wheel-20260301-120000.csv");
    }

    /** Types a line when a prompt stands there, after having looked round. */
    private final class Looking extends BufferedReader {
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

    private String looking(List<String> lines, Runnable[] looks, String... args) {
        StringWriter screen = new StringWriter();
        StringWriter err = new StringWriter();
        Surroundings bare = Run.in(home).surroundings(new PrintWriter(screen), new PrintWriter(err));
        assertThat(Main.run(new Surroundings(bare.out(), bare.err(), new Looking(screen, lines, looks), bare.charset(), bare.env(),
                bare.folders(), bare.clock(), false, bare.terminals()), args)).as(err.toString()).isZero();
        return screen.toString();
    }

    @Test
    void everyRowIsOnTheDiskBeforeTheNextSpeedIsAskedFor() {
        List<Long> rows = new ArrayList<>();
        Runnable look = () -> {
            try {
                rows.add((long) Files.readAllLines(home.resolve("log.csv")).size() - 1);
            } catch (IOException e) {
                rows.add(-1L);
            }
        };
        looking(List.of("20", "40", "back", "41", ""), new Runnable[] {look, look, look, look, look},
                sweep("--speeds", "600, 1200, 1800 rpm", "--csv", file("log.csv")));
        assertThat(rows).containsExactly(0L, 1L, 2L, 1L, 2L);
        look.run();
        assertThat(rows).endsWith(3L);
    }

    @Test
    void whatCannotBeWrittenIsTriedAgainAndNothingIsLost() throws IOException {
        Path folder = Files.createDirectory(home.resolve("gone"));
        Path aside = home.resolve("aside");
        Runnable nothing = () -> {};
        String out = looking(List.of("20", "40", "", "60"),
                new Runnable[] {nothing, () -> move(folder, aside), () -> move(aside, folder), nothing},
                sweep("--speeds", "600, 1200, 1800 rpm", "--csv", folder.resolve("log.csv").toString()));
        assertThat(words(out)).contains("log.csv can't be written: its folder is not there. What was typed before is kept.");
        assertThat(Files.readAllLines(folder.resolve("log.csv")).stream().map(line -> line.replaceAll(".*,", "")))
                .containsExactly("verdict", "right", "right", "right");
    }

    private static void move(Path from, Path to) {
        try {
            Files.move(from, to);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void aScaleIsKeptForTheVehicleAndOfferedNextTime() {
        // a display of 0.25 km/h for each Hz, half of what is declared: 10, 20, 30 at 40, 80, 120 Hz
        String first = fine("10\n20\n30\nyes\n", sweep("--speeds", "600, 1200, 1800 rpm", "--vehicle", "Fieldhand 4, bench 2"));
        assertThat(first).contains("Keep this scale only if you know that the module is good")
                .contains("Keep this scale for vehicle \"Fieldhand 4, bench 2\"? yes or no: yes\nKept. Next time add --learned.\n");
        try (Store store = Run.in(home).store()) {
            LearnedScale kept = store.learnedScales().forVehicle("Fieldhand 4, bench 2", "wheel").get(0);
            assertThat(kept.perHz().hold(0.25)).isTrue();
            assertThat(kept.origin()).isEqualTo("sweep of wheel");
        }
        String[] plain = {"sweep", wheel, "--speeds", "600, 1200 rpm", "--to", "silent", "--ramp", "0 s", "--dwell", "0 s",
            "--vehicle", "fieldhand 4, BENCH 2"};
        assertThat(fine("", plain)).contains("For this vehicle a scale is kept: learned on vehicle").contains("Add --learned")
                .contains("expected: 600 rpm");
        String[] learned = Stream.concat(Arrays.stream(plain), Stream.of("--learned")).toArray(String[]::new);
        assertThat(fine("10\n", learned)).contains("expected: 10 km/h").contains("Expected by what was learned on vehicle");
    }

    @Test
    void aScaleIsKeptOnlyAfterAYesAndForSomeVehicle() {
        String[] args = sweep("--speeds", "600, 1200, 1800 rpm");
        assertThat(fine("20\n40\n60\n\n", args)).contains("Keep this scale? Type which vehicle it is, or Enter for no: \nNot kept.\n")
                .doesNotContain("Keep this scale only");
        assertThat(fine("20\n40\n60\n", args)).contains("The scale was not kept.");
        assertThat(fine("20\n40\n60\nFieldhand 4\n", args)).contains("Kept. Next time add --learned --vehicle \"Fieldhand 4\".");
        assertThat(fine("20\n47\n60\n31\n", sweep("--speeds", "600 to 2400 by 600 rpm")))
                .contains("A scale of numbers that waver so much is not worth keeping.");
        try (Store store = Run.in(home).store()) {
            assertThat(store.learnedScales().forVehicle("Fieldhand 4")).hasSize(1);
        }
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "sweep WHEEL|sweep: it is not known which speeds to go through; give --speeds, like \"600 rpm, 6000 rpm\"",
        "sweep WHEEL --speeds 600_rpm --profile x|sweep: --speeds and --profile both say which speeds to go through; give one of them",
        "sweep WHEEL --speeds 600_rpm --dwell 1_h|--dwell:",
        "sweep WHEEL --speeds 600_rpm --csv log.txt|--csv: \"log.txt\" is no name for a table; give a name that ends in .csv",
        "sweep WHEEL --speeds 600_rpm --resume|--resume: it is not known which sweep; name its file with --csv",
        "sweep WHEEL --speeds 600_rpm --learned|--learned: it is not known which vehicle it is; add --vehicle, with the same words as when it was learned",
        "sweep WHEEL --speeds 600_rpm --learned --vehicle X|--learned: nothing was learned yet of circuit wheel on vehicle \"X\"; ",
        "sweep WHEEL --speeds 600_rpm --output cam|--output: the pattern has no output \"cam\"; it has crank",
        "sweep knock-86mm --output knock --speeds 600_rpm|knock-86mm: what a module counts of its output knock does not follow the speed; ",
        "sweep WHEEL --speeds 6000_rpm --reading shows:_table,_unit:_kPa,_points:_{1_Hz:_1_kPa,_2_Hz:_2_kPa}|--speeds: at 6000 rpm, 400 Hz the reading does not say what is shown; ",
    })
    void badInputIsRefusedAndNothingIsWritten(String command, String problem) throws IOException {
        String[] args = Arrays.stream(command.split(" ")).map(word -> word.replace("WHEEL", wheel).replace('_', ' ')).toArray(String[]::new);
        Run.Outcome outcome = Run.in(home).understudy(args);
        assertThat(outcome.exitCode()).isEqualTo(Main.BAD_INPUT);
        assertThat(outcome.err()).startsWith(problem);
        assertThat(outcome.out()).isEmpty();
        assertThat(ownFiles()).isEmpty();
    }
}
