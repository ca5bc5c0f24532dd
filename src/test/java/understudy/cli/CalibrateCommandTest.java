package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.audio.LoopbackCard;

/** Calibrating the virtual card, which is a perfect patch cable: what is played comes back bit for bit. */
class CalibrateCommandTest {

    private static LoopbackCard card;

    @TempDir
    private Path home;

    @BeforeAll
    static void plugIn() throws Exception {
        card = LoopbackCard.start();
    }

    @AfterAll
    static void unplug() throws IOException {
        card.close();
    }

    @Test
    void aPerfectCable() throws IOException {
        Path picture = home.resolve("response.svg");
        Path kept = home.resolve("response.json");
        Run.Outcome run = Run.in(home).understudy("calibrate", "--loopback", "--yes", "--json", "--plot", picture.toString(),
                "--out", kept.toString());
        assertThat(run.exitCode()).as(run.err()).isZero();
        Map<String, Object> json = JSON.std.mapFrom(run.out());
        assertThat(JSON.std.mapFrom(Files.readString(kept))).isEqualTo(json);
        assertThat(picture).isNotEmptyFile();
        assertThat(number(json, "gainDb")).isCloseTo(0, within(0.01));
        assertThat(json.get("cornerHz")).isNull();
        assertThat(json.get("inverted")).isEqualTo(false);
        assertThat(json.get("interference")).isEqualTo(List.of());
        // one clock for both: exact but for the fit's rounding
        assertThat(number(json, "clockRatio")).isCloseTo(1, within(1e-9));
        // at 24 bits and more a step of 2^-23 leaves 20 lg(0.5/sqrt 2 / (2^-23/sqrt 12)) = 140 dB
        assertThat(number(json, "sinadDb")).isGreaterThan(139);
        // what is queued on both sides is 300 ms to play and what the server holds
        assertThat(number(json, "latencySeconds")).isBetween(-1e-6, 1.0);
        System.out.printf("loopback on the virtual card: gain %.5f dB, SINAD %.1f dB, clock off %.1e, latency %.4f s%n",
                number(json, "gainDb"), number(json, "sinadDb"), number(json, "clockRatio") - 1, number(json, "latencySeconds"));
        assertThat(run.err()).contains("nothing else: no box, no clip, no vehicle");
    }

    @Test
    void aCableInTheOtherSocket() {
        Run.Outcome run = Run.in(home).understudy("calibrate", "--loopback", "--yes", "--channel", "2",
                "--out", home.resolve("none.json").toString());
        assertThat(run.exitCode()).isEqualTo(Main.BAD_INPUT);
        assertThat(run.err()).contains("channel 1: every sample is zero; other channels have a signal", "nothing was kept");
        assertThat(home.resolve("none.json")).doesNotExist();
    }

    @Test
    void withAMeter() throws IOException {
        Run.Outcome run = Run.in(home).atTerminal("\nhalf a volt\n0.512\n0.465 V\n")
                .understudy("calibrate", "--meter", "--load", "1 kohm", "--json");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.err()).contains("Press Enter", "A tone of 200 Hz plays at 50 %",
                "reading: \"half a volt\" is not a voltage", "Now with 1 kohm across the output");
        Map<String, Object> json = JSON.std.mapFrom(run.out());
        Map<?, ?> full = (Map<?, ?>) json.get("fullScaleVolts");
        Map<?, ?> ohms = (Map<?, ?>) json.get("outputOhms");
        // by hand: (0.512/0.465 - 1) x 1 kohm = 101.08 ohm; 0.512 V sqrt 2 / 0.5 = 1.4482 V; 10 Mohm shifts both by 1e-5
        assertThat(((Number) ohms.get("nominal")).doubleValue()).isCloseTo(101.08, within(0.02));
        assertThat(((Number) full.get("nominal")).doubleValue()).isCloseTo(1.44816, within(5e-5));
    }

    @Test
    void aMeterThatNobodyReads() {
        Run.Outcome run = Run.in(home).understudy("calibrate", "--meter", "--yes");
        assertThat(run.exitCode()).isEqualTo(Main.FAILED);
        assertThat(run.err()).isEqualTo("no answer came; nothing was kept\n");
        Run.Outcome nothing = Run.in(home).atTerminal("\n0\n").understudy("calibrate", "--meter");
        assertThat(nothing.exitCode()).isEqualTo(Main.FAILED);
        assertThat(nothing.err()).startsWith("the meter shows 0 V, too little to tell from nothing: set it to volts AC");
    }

    @Test
    void wrongInput() {
        bad("calibrate: it must know how; give --meter", "calibrate");
        bad("calibrate: --meter and --loopback don't go together", "calibrate", "--meter", "--loopback");
        bad("--level: 0 % is out of range; allowed are 1 % to 100 %", "calibrate", "--meter", "--level", "0 %");
        bad("--load: \"1 V\" is a voltage", "calibrate", "--meter", "--load", "1 V");
        bad("--device: no audio output named \"none\"", "calibrate", "--meter", "--device", "none");
        bad("--input: no audio input named \"none\"", "calibrate", "--loopback", "--input", "none");
        bad("--plot: a meter tells nothing to draw", "calibrate", "--meter", "--plot", "a.png");
        bad("--out: \"a.txt\" is no name for a result; give a name that ends in .json", "calibrate", "--meter", "--out", "a.txt");
        bad("nobody can be asked whether nothing else is connected", "calibrate", "--loopback");
    }

    private void bad(String begin, String... words) {
        Run.Outcome run = Run.in(home).understudy(words);
        assertThat(run.exitCode()).as(run.err()).isEqualTo(Main.BAD_INPUT);
        assertThat(run.err()).startsWith(begin);
    }

    private static double number(Map<String, Object> json, String name) {
        return ((Number) json.get(name)).doubleValue();
    }
}
