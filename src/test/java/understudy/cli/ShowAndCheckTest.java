package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.cli.terminal.ExitCode;
import understudy.pattern.PatternLibrary;

class ShowAndCheckTest {

    @TempDir
    private Path home;

    private String wheel;

    @BeforeEach
    void writeWheel() throws IOException {
        wheel = Samples.write(home, "wheel.yaml", Samples.WHEEL).toString();
    }

    @Test
    void showTellsTheFactsAndDrawsOneTurn() {
        // 3 teeth at 90, 90 and 180 degrees; 600 rpm is 10 turns a second, so a degree lasts 1/3600 s
        Run.Outcome show = Run.in(home).inAscii().understudy("show", wheel);
        assertThat(show.err()).isEmpty();
        assertThat(show.exitCode()).isZero();
        assertThat(show.out()).isEqualTo("""
                Test wheel 4-1

                Shows a wheel that can be counted by hand.
                Source: Made up.
                Speed: 60 rpm to 6000 rpm, 600 rpm unless asked otherwise

                Output 1, crank: 3 teeth over 360 deg, Hall, -1.2 V and 1.2 V; -1.2 V to 1.2 V
                  at most

                Events  a turn  at 60 rpm  at 600 rpm  at 6000 rpm
                crank   3       3 Hz       30 Hz       300 Hz

                Swing kept  at 60 rpm  at 600 rpm  at 6000 rpm
                crank       100 %      100 %       100 %
                (at 48000 samples a second; --rate of play and render raises it)

                Events of crank  to the next  at 600 rpm
                1 to 2           90 deg       25 ms
                3                180 deg      50 ms

                Test wheel 4-1, at 600 rpm

                        crank, V
                    1.2 |'''''''|         |'''''''|         |'''''''|
                        |       |        _|       |        _|       |                          _
                                '|       |        '|       |        '|                         |
                   -1.2          |_______|         |_______|         |_________________________|
                        +-----------------+-----------------+----------------+-----------------+
                        0                90                180              270              360
                                               turn of the speed, degrees
                """);
    }

    @Test
    void theSpeedAskedForIsOneOfThoseShown() {
        assertThat(Run.in(home).understudy("show", wheel, "--speed", "1200 rpm").out())
                .contains("Events  a turn  at 60 rpm  at 600 rpm  at 1200 rpm  at 6000 rpm\n"
                        + "crank   3       3 Hz       30 Hz       60 Hz        300 Hz\n")
                .contains("3                180 deg      25 ms\n")
                .contains("Test wheel 4-1, at 1200 rpm\n");
    }

    @Test
    void jsonHasEveryEvent() throws IOException {
        Map<String, Object> show = JSON.std.mapFrom(Run.in(home).understudy("show", wheel, "--json").out());
        assertThat(show).containsEntry("id", "wheel").containsEntry("title", "Test wheel 4-1");
        Map<?, ?> crank = (Map<?, ?>) ((List<?>) show.get("outputs")).get(0);
        assertThat(crank.get("eventsPerTurn")).isEqualTo(3);
        assertThat(crank.get("intervalsDeg")).isEqualTo(List.of(90, 90, 180));
        assertThat((List<?>) crank.get("events")).hasSize(6).first()
                .isEqualTo(Map.of("angleDeg", 0, "tooth", 1, "kind", "leading-edge"));
    }

    @Test
    void aPlotGoesIntoTheFileAskedFor() throws IOException {
        Path svg = home.resolve("wheel.svg");
        Run.Outcome show = Run.in(home).understudy("show", wheel, "--plot", svg.toString());
        assertThat(show.out()).endsWith("\ndrawn in " + svg + "\n");
        assertThat(Files.readString(svg)).contains("<svg").contains("Test wheel 4-1, at 600 rpm");
    }

    @Test
    void aWheelThatStandsStillHasFactsAndNoDrawing() throws IOException {
        String still = Samples.write(home, "still.yaml", Samples.WHEEL.replace("60 rpm, to", "0 rpm, to")).toString();
        Run.Outcome show = Run.in(home).understudy("show", still, "--speed", "0 rpm");
        assertThat(show.exitCode()).isZero();
        assertThat(show.out()).contains("3                180 deg      never\n").doesNotContain("crank, V");
        Path picture = home.resolve("still.png");
        Run.Outcome plot = Run.in(home).understudy("show", still, "--speed", "0 rpm", "--plot", picture.toString());
        assertThat(plot.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(plot.err()).isEqualTo("--plot: at 0 rpm hardly anything moves; give a higher --speed\n");
        assertThat(picture).doesNotExist();
    }

    @Test
    void everyShippedPatternCanBeShown() {
        for (String id : PatternLibrary.open().ids()) {
            Run.Outcome show = Run.in(home).understudy("show", id);
            assertThat(show.err()).as(id).isEmpty();
            assertThat(show.out().lines()).as(id).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(88));
        }
    }

    @Test
    void patternsListsAllThatAreShipped() throws IOException {
        List<String> ids = PatternLibrary.open().ids();
        List<String> lines = Run.in(home).understudy("patterns").out().lines().filter(line -> !line.startsWith(" ")).toList();
        assertThat(lines.subList(0, ids.size())).zipSatisfy(ids, (line, id) -> assertThat(line).startsWith(id + " "));
        assertThat(lines.get(ids.indexOf("crank-36-1-vr"))).matches("crank-36-1-vr +Crank wheel 36-1, reluctor; \\d+ rpm to \\d+ rpm");
        List<?> listed = JSON.std.listFrom(Run.in(home).understudy("patterns", "--json").out());
        assertThat(listed).extracting(pattern -> ((Map<?, ?>) pattern).get("id")).isEqualTo(ids);
    }

    @Test
    void checkTellsAllProblemsOfAllFiles() throws IOException {
        Path bad = Samples.write(home, "bad.yaml", Samples.WHEEL.replace("600 rpm", "600").replace("teeth: 4", "teeth: four"));
        Run.Outcome check = Run.in(home).understudy("check", wheel, bad.toString(), home.resolve("nosuch.yaml").toString());
        assertThat(check.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(check.out().lines().map(line -> line.replace(home + "/", ""))).containsExactly(
                "wheel.yaml: fine",
                "bad.yaml:4:18: \"600\" is only a number; write a speed like 800 rpm",
                "bad.yaml:7:20: a plain number is needed here; write a number from 1 to 1000, without quotes and unit",
                "nosuch.yaml:1:1: there is no such file; look at how its name and folder are spelled");
    }

    @Test
    void checkKnowsACircuitFromAPattern() throws IOException {
        Path good = Files.copy(Path.of("patterns/circuits/fieldhand-4-speedometer.yaml"), home.resolve("good.yaml"));
        Path bad = Files.writeString(home.resolve("bad.yaml"), Files.readString(good).replace("reach: 4 min", "reach: 0 min"));
        Run.Outcome check = Run.in(home).understudy("check", good.toString(), bad.toString(), "fieldhand-4-speedometer");
        assertThat(check.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(check.out().lines().map(line -> line.replace(home + "/", ""))).containsExactly(
                "good.yaml: fine",
                "bad.yaml:15:12: 0 min is out of range; allowed are 0.1 min to 600 min",
                "fieldhand-4-speedometer: fine");
    }

    @Test
    void checkInJsonNamesThePlaces() throws IOException {
        Path bad = Samples.write(home, "bad.yaml", Samples.WHEEL.replace("teeth: 4", "teeth: four"));
        Run.Outcome check = Run.in(home).understudy("check", "--json", wheel, bad.toString());
        assertThat(check.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        List<?> files = JSON.std.listFrom(check.out());
        assertThat(files.get(0)).isEqualTo(Map.of("file", wheel, "problems", List.of()));
        assertThat(((Map<?, ?>) files.get(1)).get("problems").toString()).startsWith("[{line=7, column=20, wrong=");
    }

    @Test
    void goodFilesAreFine() {
        Run.Outcome check = Run.in(home).understudy("check", wheel);
        assertThat(check.exitCode()).isZero();
        assertThat(check.out()).isEqualTo(wheel + ": fine\n");
    }
}
