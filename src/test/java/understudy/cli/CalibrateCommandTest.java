package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.audio.LoopbackCard;
import understudy.cli.terminal.ExitCode;
import understudy.rig.AudioOutput;
import understudy.store.Calibration;
import understudy.store.Store;

/** Calibrating the virtual card, which is a perfect patch cable: what is played comes back bit for bit. */
@Tag("real-time")
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
    void aPerfectCable() throws Exception {
        Path picture = home.resolve("response.svg");
        Path kept = home.resolve("response.json");
        assertThat(Run.in(home).understudy("rig", "make", "bench-1").exitCode()).isZero();
        assertThat(meter("0.512\n0.465\n").exitCode()).isZero();
        Run.Outcome run = BusyMachine.calibrated(card, () -> Run.in(home).understudy("calibrate", "--loopback", "--yes", "--rig", "bench-1",
                "--json", "--plot", picture.toString(), "--out", kept.toString()));
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
        assertThat(run.err().replace('\n', ' ')).contains("nothing else: no box, no clip, no vehicle", "kept with the rig bench-1");
        // no corner above 0.3 Hz into 101 ohm and 10 kohm: at least 1/(2 pi 0.3 Hz 10.1 kohm) = 52.5 uF
        assertThat(calibrated().couplingFarads().orElseThrow().nominal()).isCloseTo(52.5e-6, within(0.1e-6));
        assertThat(calibrated().fullScaleVolts().nominal()).isCloseTo(1.44816, within(5e-5));
        assertThat(number(json, "latencyUncertaintySeconds")).isBetween(0.001, 1.0);
        somethingHasChangedSince();
    }

    /** The recording level is 70 % now: 20 lg 0.7 is -3.1 dB. A later check tells it, and changes nothing. */
    private void somethingHasChangedSince() throws Exception {
        card.volumes(100, 70);
        try {
            Run.Outcome run = BusyMachine.calibrated(card, () ->
                    Run.in(home).understudy("calibrate", "--loopback", "--yes", "--rig", "bench-1", "--check"));
            assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.FAILED);
            assertThat(run.out()).contains("Mind: the gain has changed by -3.1 dB since the calibration of 2026-03-01; check the"
                    + " system's volume and the recording level");
            assertThat(run.err()).contains("the output is not what it was when it was calibrated", "what was kept with bench-1 stands");
            assertThat(history()).filteredOn(Calibration::good).extracting(Calibration::method).containsExactly("loopback", "meter");
        } finally {
            card.volumes(100, 100);
        }
    }

    /**
     * The input's scale is known: the cable is straight, so full scale of the output under load is 1.2 V peak too. Open it
     * is more by 100 ohm, 50 % either way, over 10 kohm, 5 % either way: 1.2 V x 1.01 = 1.212 V. Highest
     * 1.2 x 1.03 x (1 + 150/9500) x 1.00115 = 1.2570, 3.7 % more.
     */
    @Test
    void voltsFromACable() throws Exception {
        assertThat(Run.in(home).understudy("rig", "make", "bench-1").exitCode()).isZero();
        Run.Outcome run = BusyMachine.calibrated(card, () -> Run.in(home).understudy("calibrate", "--loopback", "--yes", "--rig", "bench-1",
                "--input-full-scale", "1.2 V 3%", "--input-resistance", "10k", "--json"));
        assertThat(run.exitCode()).as(run.err()).isZero();
        Map<?, ?> volts = (Map<?, ?>) JSON.std.mapFrom(run.out()).get("fullScaleVolts");
        // the gain is exact to 0.01 dB
        assertThat(((Number) volts.get("nominal")).doubleValue()).isCloseTo(1.212, within(0.0014));
        assertThat(((Number) volts.get("tolerance")).doubleValue()).isCloseTo(1.2570 / 1.212 - 1, within(2e-4));
        assertThat(calibrated().fullScaleVolts().nominal()).isCloseTo(1.212, within(0.0014));
    }

    /** A meter that shows the same is no change; one that shows a fifth less is, and what was kept stands. */
    @Test
    void aLaterCheckKeepsNothing() {
        assertThat(Run.in(home).understudy("rig", "make", "bench-1").exitCode()).isZero();
        bad("--check: bench-1 has no calibration with a meter to compare with", "calibrate", "--meter", "--yes", "--rig", "bench-1", "--check");
        bad("--check: there is nothing to compare with; give --rig too", "calibrate", "--meter", "--yes", "--check");
        assertThat(meter("0.512\n0.465\n").exitCode()).isZero();
        Run.Outcome same = meter("0.51\n0.463\n", "--check");
        assertThat(same.exitCode()).as(same.err()).isZero();
        assertThat(same.out()).contains("nothing has changed since the calibration of 2026-03-01; what was kept with bench-1 stands");
        Run.Outcome less = meter("0.4\n0.363\n", "--check");
        assertThat(less.exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(less.out()).contains("Mind: the full scale has changed by -22 %");
        assertThat(meter("0\n0\n", "--check").exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(history()).hasSize(1);
        assertThat(calibrated().fullScaleVolts().nominal()).isCloseTo(1.44816, within(5e-5));
    }

    @Test
    void withAMeter() throws IOException {
        Run.Outcome run = Run.in(home).atTerminal("\nhalf a volt\n0.512\n0.465 V\n")
                .understudy("calibrate", "--meter", "--load", "1 kohm", "--json");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.err()).contains("Press Enter", "A tone of 200 Hz plays at 50 %",
                "\"half a volt\" is not a voltage", "Now with 1 kohm across the output");
        Map<String, Object> json = JSON.std.mapFrom(run.out());
        Map<?, ?> full = (Map<?, ?>) json.get("fullScaleVolts");
        Map<?, ?> ohms = (Map<?, ?>) json.get("outputOhms");
        // by hand: (0.512/0.465 - 1) x 1 kohm = 101.08 ohm; 0.512 V sqrt 2 / 0.5 = 1.4482 V; 10 Mohm shifts both by 1e-5
        assertThat(((Number) ohms.get("nominal")).doubleValue()).isCloseTo(101.08, within(0.02));
        assertThat(((Number) full.get("nominal")).doubleValue()).isCloseTo(1.44816, within(5e-5));
    }

    /** Volts first, then the cable; a failed one changes nothing but the history. */
    @Test
    void whatIsKeptWithARig() {
        assertThat(Run.in(home).understudy("rig", "make", "bench-1").exitCode()).isZero();
        bad("--rig: the volts of bench-1 were never measured", "calibrate", "--loopback", "--yes", "--rig", "bench-1");
        bad("there is no rig called \"bench-2\"", "calibrate", "--meter", "--yes", "--rig", "bench-2");
        Run.Outcome first = meter("0.512\n0.465\n");
        assertThat(first.exitCode()).as(first.err()).isZero();
        assertThat(first.out()).contains("kept with the rig bench-1").doesNotContain("Mind:");
        assertThat(calibrated().fullScaleVolts().nominal()).isCloseTo(1.44816, within(5e-5));

        assertThat(meter("0\n0\n").exitCode()).isEqualTo(ExitCode.FAILED);
        Run.Outcome cable = Run.in(home).understudy("calibrate", "--loopback", "--yes", "--rig", "bench-1", "--channel", "2",
                "--out", home.resolve("none.json").toString());
        assertThat(cable.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(cable.err()).contains("channel 1: every sample is zero; other channels have a signal", "no calibration was kept");
        assertThat(home.resolve("none.json")).doesNotExist();
        assertThat(calibrated().fullScaleVolts().nominal()).isCloseTo(1.44816, within(5e-5));

        // 0.4 of 0.512 V is 21.9 % less; 0.4/0.365 gives 95.9 ohm, which is no news
        assertThat(meter("0.4\n0.365\n").out()).contains("Mind: the full scale has changed by -22 %")
                .doesNotContain("resistance has changed");
        List<Calibration> history = history();
        assertThat(history).extracting(Calibration::method).containsExactly("meter", "loopback", "meter", "meter");
        assertThat(history).extracting(Calibration::good).containsExactly(true, false, false, true);
        assertThat(history.get(1).remark()).contains("every sample is zero");
    }

    private Run.Outcome meter(String readings, String... more) {
        Stream<String> words = Stream.of("calibrate", "--meter", "--yes", "--rig", "bench-1", "--load", "1k");
        return Run.in(home).atTerminal(readings).understudy(Stream.concat(words, Stream.of(more)).toArray(String[]::new));
    }

    private AudioOutput calibrated() {
        try (Store store = Store.open(Run.in(home).folders().data().resolve("understudy.db"))) {
            assertThat(store.rigs().find("bench-1").calibrated()).isTrue();
            return store.rigs().find("bench-1").output();
        }
    }

    private List<Calibration> history() {
        try (Store store = Store.open(Run.in(home).folders().data().resolve("understudy.db"))) {
            return store.rigs().calibrations("bench-1");
        }
    }

    @Test
    void aMeterThatNobodyReads() {
        Run.Outcome run = Run.in(home).understudy("calibrate", "--meter", "--yes");
        assertThat(run.exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(run.err()).isEqualTo("no answer came; no calibration was kept\n");
        Run.Outcome nothing = Run.in(home).atTerminal("\n0\n").understudy("calibrate", "--meter");
        assertThat(nothing.exitCode()).isEqualTo(ExitCode.FAILED);
        assertThat(nothing.err().replaceAll("\\s+", " ")).startsWith("the meter shows 0 V, too little to be distinguished from nothing; set it to volts AC");
    }

    @Test
    void wrongInput() {
        bad("calibrate: it must know how; give --meter", "calibrate");
        bad("calibrate: --meter and --loopback don't go together", "calibrate", "--meter", "--loopback");
        bad("--level: 0 % is out of range; allowed are 1 % to 100 %", "calibrate", "--meter", "--level", "0 %");
        bad("--load: \"1 V\" is a voltage", "calibrate", "--meter", "--load", "1 V");
        bad("--device: no audio output named \"none\"", "calibrate", "--meter", "--device", "none");
        bad("--input: no audio input named \"none\"", "calibrate", "--loopback", "--input", "none");
        bad("--input-full-scale: \"2 ohm\" is a resistance", "calibrate", "--loopback", "--input-full-scale", "2 ohm");
        bad("--plot: a meter gives nothing to draw", "calibrate", "--meter", "--plot", "a.png");
        bad("--out: \"a.txt\" is no name for a result; give a name that ends in .json", "calibrate", "--meter", "--out", "a.txt");
        bad("nobody can be asked whether nothing else is connected", "calibrate", "--loopback");
    }

    private void bad(String begin, String... words) {
        Run.Outcome run = Run.in(home).understudy(words);
        assertThat(run.exitCode()).as(run.err()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.err()).startsWith(begin);
    }

    private static double number(Map<String, Object> json, String name) {
        return ((Number) json.get(name)).doubleValue();
    }
}
