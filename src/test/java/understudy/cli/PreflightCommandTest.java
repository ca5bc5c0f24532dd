package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PreflightCommandTest {

    @TempDir
    private Path home;

    @BeforeEach
    void thereIsARig() {
        understudy("rig", "make", "bench", "--series", "3.6 kohm 1%", "--shunt", "2.2 kohm 1%");
        understudy("rig", "make", "bare");
    }

    private Run.Outcome understudy(String... words) {
        return Run.in(home).understudy(words);
    }

    @Test
    void tellsOnOnePageOverWhichSpeedsTheInputDecodesAndWhy() {
        Run.Outcome told = understudy("preflight", "wheel-speed-44-vr", "--rig", "bench", "--input", "reluctor-hysteresis", "--fit");
        assertThat(told.err()).isEmpty();
        assertThat(told.exitCode()).isZero();
        assertThat(told.out().replaceAll("\\s+", " "))
                .startsWith("Wheel-speed ring of 44 teeth, reluctor: output wheel, from rig bench into reluctor-hysteresis ")
                .contains("compare with a known-good sensor", "not calibrated", "It decodes from ",
                        " to 250 km/h on this input, with every part at its worst (from ", " to 250 km/h at nominal values); ",
                        "to spare at 50 km/h", "threshold: ", "This would widen it:", "volts that rise faster with speed: ",
                        "Above 250 km/h: the pattern's own range ends here.", "never switches", "44 of 44", "speed, km/h");
        assertThat(told.out().lines()).hasSizeLessThan(66).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(80 + 30));
    }

    @Test
    void tellsScriptsAllOfIt() throws IOException {
        Run.Outcome told = understudy("preflight", "crank-36-1-vr", "--rig", "bench", "--input", "reluctor-hysteresis", "--fit",
                "--fault", "swapped polarity", "--json");
        assertThat(told.exitCode()).isZero();
        Map<String, Object> json = JSON.std.mapFrom(told.out());
        assertThat(json).containsEntry("usable", false).containsEntry("reason", "polarity").containsEntry("from", null)
                .containsEntry("remedies", List.of("swap the two clips, or the polarity of what is played"));
        Map<?, ?> atSpeed = (Map<?, ?>) json.get("atSpeed");
        assertThat(atSpeed.get("verdict")).isEqualTo("swapped");
        assertThat(atSpeed.get("countedPerTurn")).isEqualTo(35);
        assertThat((List<?>) json.get("speeds")).hasSizeGreaterThan(20);
    }

    @Test
    void drawsMarginOverSpeed() throws IOException {
        Path picture = home.resolve("margin.svg");
        Run.Outcome told = understudy("preflight", "output-shaft-17-vr", "--rig", "bench", "--input", "reluctor-adaptive", "--fit",
                "--plot", picture.toString());
        assertThat(told.exitCode()).isZero();
        assertThat(told.out()).endsWith("drawn in " + picture + "\n");
        assertThat(Files.readString(picture)).contains("<svg");
    }

    @Test
    void moreThanTheRigCanGiveIsRefusedWithTheNumber() {
        Run.Outcome told = understudy("preflight", "crank-36-1-vr", "--rig", "bench", "--input", "reluctor-hysteresis");
        assertThat(told.exitCode()).isEqualTo(2);
        assertThat(told.out()).isEmpty();
        assertThat(told.err()).isEqualTo("crank-36-1-vr: its output crank reaches 1.343 V to one side of its mean, more than the"
                + " 525.9 mV peak that rig bench gives at the pins of this input; add --fit to have all outputs scaled down alike\n");
    }

    @Test
    void allThatIsWrongIsToldAtOnce() {
        Run.Outcome told = understudy("preflight", "crank-36-1-cam-1-hall", "--rig", "bare", "--input", "reluctor-adaptiv",
                "--output", "crankshaft", "--rate", "3", "--plot", "margin.gif");
        assertThat(told.exitCode()).isEqualTo(2);
        assertThat(told.err().lines()).containsExactlyInAnyOrder(
                "--output: the pattern has no output \"crankshaft\"; it has crank, cam",
                "--input: \"reluctor-adaptiv\" is no kind of input; did you mean reluctor-adaptive?",
                "--rate: 3 Hz is out of range; allowed are 8 kHz to 768 kHz",
                "--plot: \"margin.gif\" is no name for a picture; give a name that ends in .png or .svg",
                "--rig: bare has no divider yet; choose one with 'understudy divider --rig bare --input KIND"
                        + " --save', then build it");
    }

    @Test
    void anUnknownRigAnInputOutOfReachAndOneThatIsMadeForSomethingElseAreRefused() {
        Run.Outcome unknown = understudy("preflight", "sine", "--rig", "table", "--input", "resistive");
        assertThat(unknown.exitCode()).isEqualTo(2);
        assertThat(unknown.err()).isEqualTo("there is no rig called \"table\"; there are: bare, bench\n");
        Run.Outcome outOfReach = understudy("preflight", "sine", "--rig", "bench", "--input", "two-wire-current");
        assertThat(outOfReach.exitCode()).isEqualTo(2);
        assertThat(outOfReach.err()).contains("no passive rig can stand in for a two-wire active sensor");
        Run.Outcome misled = understudy("preflight", "knock-86mm", "--output", "knock", "--rig", "bench", "--input",
                "pulled-up-5-v", "--fit");
        assertThat(misled.exitCode()).isEqualTo(2);
        assertThat(misled.err()).isEqualTo("knock-86mm: output knock rings like a knock sensor, and this input is made for a Hall"
                + " sensor or a switch: it would take every swing for a tooth; a knock input is a plain resistance: --input"
                + " \"resistive, resistance: 1 Mohm, needs: 50 mV\" with what you know of it\n");
    }

    @Test
    void tellsHowManySwingsOfABurstTheInputHears() throws IOException {
        String[] words = {"preflight", "knock-86mm", "--output", "knock", "--rig", "knock=bench", "--input",
            "knock=resistive, needs: 60 mV", "--fit"};
        Run.Outcome told = understudy(words);
        assertThat(told.err()).isEmpty();
        assertThat(told.out()).containsPattern("Of each burst at least \\d+ swings are beyond what the input needs;")
                .contains("2 of 2");
        String[] scripted = Arrays.copyOf(words, words.length + 1);
        scripted[words.length] = "--json";
        Map<?, ?> at = (Map<?, ?>) JSON.std.mapFrom(understudy(scripted).out()).get("atSpeed");
        // of 527 mV 90 % for all, 5/6 of that, 0.5 V of 0.598 V, for the burst; 20 % less full scale, 2 % less from the
        // resistors: 311 mV, which with a time constant of 1.5 ms become 60 mV in 2.47 ms, after 16.4 periods; tops stand a
        // quarter of a period after each start
        assertThat(at.get("oscillations")).isEqualTo(17);
    }

    /** Of what full scale gives at the pins, {@code render} leaves so many volts of the pattern: that is its level. */
    @ParameterizedTest
    @CsvSource({
        "knock-86mm, knock", "knock-86mm, crank", "crank-36-1-cam-1-hall, cam", "crank-36-1-cam-1-hall, crank",
        "output-shaft-17-vr, output-shaft"
    })
    void fitsAtTheLevelAtWhichTheSameWordsPlay(String pattern, String output) throws IOException {
        understudy("rig", "make", "kept", "--series", "10 kohm 1%", "--shunt", "11 kohm 1%");
        String[] same = {"--rig", "kept", "--input", "resistive, needs: 60 mV", "--fit", "--json"};
        Run.Outcome judged = understudy(with(same, "preflight", pattern, "--output", output));
        assertThat(judged.err()).isEmpty();
        Run.Outcome rendered = understudy(with(same, "render", pattern, "--for", "10 ms", "--out", home.resolve("fit.wav").toString()));
        assertThat(rendered.exitCode()).isZero();
        Map<String, Object> preflight = JSON.std.mapFrom(judged.out());
        List<?> outputs = (List<?>) JSON.std.mapFrom(rendered.out()).get("outputs");
        Map<?, ?> played = (Map<?, ?>) outputs.stream().filter(one -> output.equals(((Map<?, ?>) one).get("output"))).findFirst()
                .orElseThrow();
        // printed with twelve digits
        assertThat(number(preflight, "level"))
                .isCloseTo(number(preflight, "mostPinVolts") / number(played, "fullScaleVolts"), withinPercentage(1e-8));
    }

    private static double number(Map<?, ?> map, String key) {
        return ((Number) map.get(key)).doubleValue();
    }

    private static String[] with(String[] last, String... first) {
        String[] all = Arrays.copyOf(first, first.length + last.length);
        System.arraycopy(last, 0, all, first.length, last.length);
        return all;
    }

    @Test
    void playTellsInOneLineWhatItFoundBefore() {
        // parts that keep every limit with a coil's input
        understudy("rig", "make", "kept", "--series", "10 kohm 1%", "--shunt", "11 kohm 1%");
        Run.Outcome played = understudy("play", "output-shaft-17-vr", "--rig", "kept", "--input", "reluctor-adaptive", "--fit",
                "--speed", "800 rpm", "--to", "silent", "--for", "100 ms", "--yes");
        assertThat(played.err()).isEmpty();
        assertThat(played.exitCode()).isZero();
        assertThat(played.out()).containsPattern(
                "(?m)^output-shaft decodes from [\\d.]+ rpm to 7000 rpm on this input, with every part at its worst; [\\d.]+ mV to spare at 800 rpm$");
    }
}
