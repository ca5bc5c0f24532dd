package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.cli.terminal.ExitCode;

class ExpectCommandTest {

    private static final String RING = "shows: wheel speed, unit: km/h, teeth: 44, rolls: 1.927 m";

    @TempDir
    private Path home;

    private String fine(String... args) {
        Run.Outcome outcome = Run.in(home).understudy(args);
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.exitCode()).isZero();
        return outcome.out();
    }

    private Map<String, Object> json(String... args) throws IOException {
        return JSON.std.mapFrom(fine(args));
    }

    @Test
    void oneValue() {
        // 50 km/h is 13.889 m/s: 7.2075 turns of 1.927 m, times 44 teeth; good within 3 % and half a step
        assertThat(fine("expect", "wheel-speed-44-vr", "--speed", "50 km/h", "--reading", RING)).isEqualTo("""
                At 50 km/h, that is 317.1 Hz, the display should show 50 km/h, good from 48 to
                52.
                Taken: wheel speed in km/h: 44 teeth, 1.927 m a turn; within 3 %, in steps of 1
                  km/h.
                """);
    }

    @Test
    void thePatternsOwnSpeedUnlessSomethingElseIsSaid() {
        assertThat(fine("expect", "crank-36-1-vr")).startsWith("At 800 rpm, that is 480 Hz, the display should show 800 rpm, ")
                .contains("That is how the pattern is made");
    }

    @Test
    void theOtherWay() {
        // 60 km/h / 3.6 / 1.9273 m x 4.1 = 35.456 turns of the shaft a second, 2127 rpm, of 17 teeth
        assertThat(fine("expect", "output-shaft-17-vr", "--shown", "60", "--reading",
                "shows: vehicle speed, unit: km/h, teeth: 17, axle-ratio: 4.1, tyre: 205/55R16"))
                .startsWith("To show 60 km/h: inject 2127 rpm, that is 602.7 Hz.\n");
    }

    @Test
    void aTableForTheWall() {
        assertThat(fine("expect", "wheel-speed-44-vr", "--from", "20 km/h", "--to", "60 km/h", "--step", "20 km/h")).isEqualTo("""
                What the display should show
                  wheel speed in km/h: 44 teeth, 1.927 m a turn; within 3 %, in steps of 1 km/h

                Speed    Frequency  Shows    Good from  to
                20 km/h  126.9 Hz   20 km/h  19 km/h    21 km/h
                40 km/h  253.7 Hz   40 km/h  39 km/h    41 km/h
                60 km/h  380.6 Hz   60 km/h  58 km/h    62 km/h
                """);
    }

    @Test
    void aTableAsCsv() {
        assertThat(fine("expect", "--from", "100 Hz", "--to", "200 Hz", "--step", "50 Hz", "--reading",
                "shows: engine speed, unit: rpm, events: 2", "--csv")).isEqualTo("""
                frequency (Hz),shows (rpm),good from (rpm),to (rpm)
                100,3000,2970,3030
                150,4500,4455,4545
                200,6000,5940,6060
                """);
    }

    @Test
    void theTableReachesItsEnd() {
        assertThat(fine("expect", "--from", "0 Hz", "--to", "1 Hz", "--step", "0.1 Hz", "--reading", "shows: frequency, unit: Hz", "--csv")
                .lines()).hasSize(12);
    }

    @Test
    void beyondATableThereIsNoNumber() {
        assertThat(fine("expect", "--from", "70 Hz", "--to", "100 Hz", "--step", "10 Hz", "--reading",
                "shows: table, unit: kPa, points: {80 Hz: 0 kPa, 159 Hz: 101 kPa}")).contains("\n70 Hz      -         -          -\n");
    }

    @Test
    void forScripts() throws IOException {
        Map<String, Object> json = json("expect", "wheel-speed-44-vr", "--speed", "50 km/h", "--json");
        Map<?, ?> point = (Map<?, ?>) ((List<?>) json.get("points")).get(0);
        // twelve digits are printed
        assertThat(((Number) point.get("frequencyHz")).doubleValue()).isCloseTo(50 / 3.6 / 1.927 * 44, within(1e-9));
        assertThat(point.get("goodFrom")).isEqualTo(48);
        assertThat(point.get("goodTo")).isEqualTo(52);
    }

    @Test
    void learns() throws IOException {
        Map<String, Object> json = json("expect", "--learn", "130 Hz: 21 km/h, 320 Hz: 50, 760 Hz: 120", "--tyre", "205/55R16", "--json");
        // through zero: from 0.5 below to 1 above 21 at 130, 50 at 320, 120 at 760, what all three allow
        Map<?, ?> slope = (Map<?, ?>) json.get("perHzThroughZero");
        assertThat(((Number) slope.get("low")).doubleValue()).isCloseTo(20.5 / 130, within(1e-9));
        assertThat(((Number) slope.get("high")).doubleValue()).isCloseTo(121 / 760.0, within(1e-9));
        // 1.9273 m within 3 % x 3.6 / slope: 42.65 to 45.32
        assertThat(json.get("teeth")).isEqualTo(List.of(43, 44, 45));
        assertThat((List<?>) json.get("findings")).isEmpty();
    }

    @Test
    void learnsThatBothEdgesAreCounted() {
        assertThat(fine("expect", "wheel-speed-44-vr", "--reading", RING, "--learn", "20 km/h: 40, 50 km/h: 100, 120 km/h: 240"))
                .contains("times what the reading given declares: twice.");
    }

    @Test
    void whatIsLearnedCanBeUsed() {
        String learned = fine("expect", "--learn", "130 Hz: 21 km/h, 320 Hz: 50, 760 Hz: 120");
        String reading = learned.substring(learned.indexOf("  reading: ") + "  reading: ".length()).strip();
        assertThat(fine("expect", "--frequency", "634 Hz", "--reading", reading)).startsWith("At 634 Hz the display should show 100 km/h");
    }

    @Test
    void pairsFromAFile() throws IOException {
        Path file = Files.writeString(home.resolve("bench.txt"), "# the bench\n130 Hz: 21 km/h\n\n320 Hz: 50 # steady\n760 Hz: 120\n");
        String fromFile = fine("expect", "--learn", file.toString());
        assertThat(fromFile).isEqualTo(fine("expect", "--learn", "130 Hz: 21 km/h; 320 Hz: 50; 760 Hz: 120"));
    }

    @Test
    void problemsInAFileHaveTheirLine() throws IOException {
        Path file = Files.writeString(home.resolve("bench.txt"), "130 Hz: 21 km/h\n\n320 Hz, 50\n760 Hz: 3 rpm\n");
        Run.Outcome outcome = Run.in(home).understudy("expect", "--learn", file.toString());
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err()).isEqualTo(file + ":3: \"320 Hz, 50\" is no pair; write pairs like \"100 Hz: 16 km/h, 200 Hz: 32\"\n"
                + file + ":4: \"3 rpm\" is a turning speed; write a road speed like 45 km/h (units: km/h, mph)\n");
    }

    @Test
    void oddNumbersAreNamed() {
        assertThat(fine("expect", "--learn", "130 Hz: 21 km/h, 210 Hz: 33, 320 Hz: 70, 510 Hz: 80, 760 Hz: 80, 900 Hz: 80"))
                .contains("Look: from 510 Hz up the display stays at 80 km/h.");
        assertThat(fine("expect", "--learn", "130 Hz: 21 km/h, 210 Hz: 33, 320 Hz: 70, 510 Hz: 80, 760 Hz: 120"))
                .contains("Look: 70 km/h at 320 Hz does not fit: it is 20 km/h too high").contains("320 Hz    70 km/h    50.5 km/h    left out");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "'' | expect: it is not known what the display shows; name a pattern, or give --reading",
        "--reading;shows: frequency, unit: Hz | expect: it is not known what is injected; name a pattern, or give --frequency, --shown, or --from and --to",
        "sine;--speed;50 Hz;--shown;50 Hz | expect: --shown and --speed are different questions; ask one at a time",
        "sine;--frequency;50 Hz | --frequency: the pattern gives the frequency; leave either away",
        "sine;--from;50 Hz | --from: a table has two ends; give --from and --to",
        "sine;--from;50 Hz;--to;20 Hz | --from: \"50 Hz\" is not below the upper end; give the lower end here",
        "sine;--from;50 Hz;--to;60 Hz;--step;0 Hz | --step: \"0 Hz\" makes too many rows; at most 1000 fit",
        "sine;--step;1 Hz | --step: there is no table to step through; add --from and --to",
        "sine;--csv;--json | --csv: --json was asked for as well; ask for one of them",
        "sine;--output;cam | --output: the pattern has no output \"cam\"; it has tone",
        "knock-86mm;--output;knock | knock-86mm: its output knock has no events that a module counts; name another one with --output",
        "sine;--tyre;205/55R16 | --tyre: it goes with --learn only; write the tyre into --reading, like \"tyre: 205/55R16\"",
        "sine;--shown;3 rpm | --shown: \"3 rpm\" is a turning speed; write a frequency like 100 Hz",
        "wheel-speed-44-vr;--shown;400 | --shown: it takes 400 km/h, out of this pattern's range; allowed are 1 km/h to 250 km/h",
        "--frequency;10 Hz;--reading;shows: table, unit: kPa, points: {80 Hz: 0 kPa, 159 Hz: 101 kPa} | --reading: at 10 Hz the scale says nothing of what is shown; keep within the ends of its table",
        "--learn;100 Hz: 16 km/h | --learn: a scale needs two different frequencies at least; inject a second one, far from the first",
        "--learn;100 Hz: 16, 200 Hz: 32 | --learn: no number has a unit; write it behind one of them at least, as in \"100 Hz: 16 km/h, 200 Hz: 32\"",
        "--learn;100 Hz: 16 km/h, 200 Hz: 20 mph | pair 2: \"20 mph\" is not in km/h, as the others are; write every number as the display shows it, all in one unit",
        "--learn;100 Hz: 0 km/h, 200 Hz: 0 | --learn: the display shows 0 km/h whatever is injected; there is no scale to learn; look whether the signal arrives at all",
        "--learn;100 Hz: 16 km/h, 200 Hz: 32;--tyre;big | --tyre: \"big\" is not a length; write a length like 2.1 m (units: m, in)"})
    void badInput(String args, String said) {
        String[] words = ("expect;" + args).split(";");
        Run.Outcome outcome = Run.in(home).understudy(args.isEmpty() ? new String[] {"expect"} : words);
        assertThat(outcome.err()).isEqualTo(said + "\n");
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
    }
}
