package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.cli.terminal.ExitCode;

/** Playing and rendering through a rig, on to an input. */
class HookupTest {

    private static final String INPUT = "resistive, resistance: 100k 0%";
    /** 12 kohm beside the input, behind 10.1 kohm. */
    private static final double BEHIND_OHMS = 1 / (1 / 12e3 + 1 / 100_000.2);
    private static final double PIN_VOLTS = 1.4 * BEHIND_OHMS / (10_100 + BEHIND_OHMS);

    @TempDir
    private Path home;

    private Path wav;
    private String wheel;

    @BeforeEach
    void makeRig() throws IOException {
        wav = home.resolve("x.wav");
        wheel = Samples.write(home, "wheel.yaml", Samples.WHEEL).toString();
        Run.Outcome made = Run.in(home).understudy("rig", "make", "bench", "--full-scale", "1.4 V 0%", "--output-ohms", "100 ohm 0%",
                "--output-capacitor", "10 uF 0%", "--series", "10k 0%", "--shunt", "12k 0%");
        assertThat(made.err()).isEmpty();
    }

    private Run.Outcome render(String... words) {
        String[] all = new String[words.length + 3];
        all[0] = "render";
        all[1] = "--out";
        all[2] = wav.toString();
        System.arraycopy(words, 0, all, 3, words.length);
        return Run.in(home).understudy(all);
    }

    @Test
    void patternVoltsAreVoltsAtThePinsUnderLoad() throws Exception {
        Path small = Samples.write(home, "tone.yaml", """
                title: A tone
                purpose: Half a volt at the pins.
                source: Made up.
                speed: {default: 1 kHz, from: 1 Hz, to: 10 kHz}
                outputs:
                  - name: tone
                    tone: {shape: sine, peak-to-peak: 1 V, cycles-per-turn: 1}
                """);
        Run.Outcome rendered = render(small.toString(), "--rig", "bench", "--input", INPUT, "--for", "2 s", "--json");
        assertThat(rendered.err()).isEmpty();
        Map<String, Object> json = JSON.std.mapFrom(rendered.out());
        assertThat(((Number) json.get("fullScaleVolts")).doubleValue()).isCloseTo(PIN_VOLTS, within(1e-4));
        assertThat(json.get("calibrated")).isEqualTo(false);
        double largest = largest(0, 1);
        // 1 kHz behind a corner of 1 Hz: 1 + 5e-7 more for the droop, and what is left of the start's own offset:
        // 0.5 V/(2 pi 1 kHz) of charge at 1 Hz, 1e-3 of the level
        assertThat(largest).isCloseTo(0.5 / PIN_VOLTS, within(0.002));
    }

    /** Part of full scale that a channel reaches, the first second left out. */
    private double largest(int channel, int channels) throws Exception {
        double largest = 0;
        try (AudioInputStream in = AudioSystem.getAudioInputStream(wav.toFile())) {
            byte[] bytes = in.readAllBytes();
            for (int i = 3 * (48_000 * channels + channel); i < bytes.length; i += 3 * channels) {
                largest = Math.max(largest, Math.abs(bytes[i] & 255 | (bytes[i + 1] & 255) << 8 | bytes[i + 2] << 16) / 0x1p23);
            }
        }
        return largest;
    }

    /** Half a volt at each of two different pins: a crank's through the bench's divider, a cam's through a smaller one. */
    private String twoTones() throws IOException {
        Run.in(home).understudy("rig", "make", "cam-box", "--full-scale", "1.4 V 0%", "--output-ohms", "100 ohm 0%",
                "--output-capacitor", "10 uF 0%", "--series", "10k 0%", "--shunt", "56k 0%");
        return Samples.write(home, "two.yaml", """
                title: Two tones
                purpose: Half a volt each.
                source: Made up.
                speed: {default: 1 kHz, from: 100 Hz, to: 4 kHz}
                outputs:
                  - name: crank
                    tone: {shape: sine, peak-to-peak: 1 V, cycles-per-turn: 1}
                  - name: cam
                    tone: {shape: sine, peak-to-peak: 1 V, cycles-per-turn: 2}
                """).toString();
    }

    @Test
    void eachOutputGoesThroughItsOwnRigIntoItsOwnInput() throws Exception {
        String cam = "cam=resistive, resistance: 22k 0%, needs: 0.6 V";
        String[] both = {twoTones(), "--rig", "bench", "--input", INPUT, "--rig", "cam = cam-box", "--input", cam, "--for", "2 s"};
        Run.Outcome rendered = render(both);
        assertThat(rendered.err()).isEmpty();
        assertThat(rendered.out()).contains("\ncrank: rig bench on resistive: volts are at the pins, under load; full scale is ",
                "\ncam: rig cam-box on resistive: volts are at the pins, under load; full scale is ");
        double behindOhms = 1 / (1 / 56e3 + 1 / 22_000.2);
        double camVolts = 1.4 * behindOhms / (10_100 + behindOhms) * 22_000 / 22_000.2;
        // as for one output: what is left of the start, 1e-3 of the level
        assertThat(largest(0, 2)).isCloseTo(0.5 / PIN_VOLTS, within(0.002));
        assertThat(largest(1, 2)).isCloseTo(0.5 / camVolts, within(0.002));
        assertThat(camVolts / PIN_VOLTS).as("they differ").isGreaterThan(1.1);

        String[] fitted = Arrays.copyOf(both, both.length + 2);
        fitted[both.length] = "--fit";
        fitted[both.length + 1] = "--json";
        Run.Outcome json = render(fitted);
        assertThat(json.err()).isEmpty();
        // scaled alike: the one with less room fills 90 %, the other the same volts
        assertThat(largest(0, 2)).isCloseTo(0.9, within(0.002));
        assertThat(largest(1, 2)).isCloseTo(0.9 * PIN_VOLTS / camVolts, within(0.002));
        Map<String, Object> told = JSON.std.mapFrom(json.out());
        assertThat(told.get("fullScaleVolts")).isNull();
        Map<?, ?> second = (Map<?, ?>) ((java.util.List<?>) told.get("outputs")).get(1);
        assertThat(second.get("rig")).isEqualTo("cam-box");
        // full scale there is worth so many of the pattern's volts: level 0.9 PIN_VOLTS/0.5
        assertThat(((Number) second.get("fullScaleVolts")).doubleValue())
                .isCloseTo(camVolts / (0.9 * PIN_VOLTS / 0.5), within(1e-4));
    }

    @Test
    void eachOutputIsForeseenOnItsOwnInput() throws Exception {
        Run.Outcome play = Run.in(home).understudy("play", twoTones(), "--rig", "bench", "--rig", "cam=cam-box", "--input",
                INPUT, "--input", "cam=resistive, resistance: 22k 0%, needs: 0.6 V", "--to", "silent", "--for", "200 ms");
        assertThat(play.err()).isEmpty();
        // half a volt into an input that needs 0.1 V, and one that needs 0.6 V
        assertThat(play.out()).containsPattern("\ncrank decodes from 100 Hz to 4 kHz on this input[^\n]*; 400 mV to spare at 1 kHz\n")
                .containsPattern("\ncam does not decode at any speed on this input[^\n]*; 100 mV short at 1 kHz\n");
        Run.Outcome preflight = Run.in(home).understudy("preflight", home.resolve("two.yaml").toString(), "--output", "cam",
                "--rig", "cam=cam-box", "--rig", "bench", "--input", "resistive, needs: 0.2 V");
        assertThat(preflight.err()).isEmpty();
        assertThat(preflight.out()).startsWith("Two tones: output cam, from rig cam-box into resistive\n");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            --rig;crank=bench;--input;crank=resistive|--rig: nothing is said of output cam; add --rig cam=NAME and --input cam=KIND, or leave it out with --channels
            --rig;bench;--input;crank=resistive|--rig: the volts at the pins of output cam depend on the input too; add --input KIND; 'understudy input' lists the kinds
            --rig;crank=bench;--input;resistive|--input: it says nothing of output cam without a rig; add --rig NAME, or leave it out
            --rig;bench;--input;resistive;--input;can=resistive|--input: the pattern has no output "can"; it has crank, cam
            --rig;bench;--input;cam=resistive;--input;cam=resistive;--input;resistive|--input: it is given twice for cam; leave one of them out
            --rig;bench;--rig;cam-box;--input;resistive|--rig: "cam-box" is said of every output, and so was "bench"; say of which output: --rig crank=...
            """)
    void whatIsSaidOfOutputsMustFitTogether(String typed, String said) throws Exception {
        Run.Outcome outcome = render((twoTones() + ";" + typed).split(";"));
        assertThat(outcome.err()).isEqualTo(said + "\n");
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(wav).doesNotExist();
        // an output that is not played needs nothing
        assertThat(render(twoTones(), "--channels", "crank", "--rig", "crank=bench", "--input", "crank=resistive", "--for", "1 s").err())
                .isEmpty();
    }

    @Test
    void theNoteTellsVoltsBaselineAndDroop() { // 1/(2 pi 10 uF 20.8 kohm) is 765 mHz
        Run.Outcome rendered = render(wheel, "--fit", "--rig", "bench", "--input", INPUT, "--for", "1 s", "--speed", "6000 rpm");
        assertThat(rendered.err()).isEmpty();
        assertThat(rendered.out()).contains("\nscaled to fit: 1 V of the pattern comes out as ")
                .contains("\nrig bench on resistive: volts are at the pins, under load; full scale is 721 mV there\n"
                        + "not calibrated: full scale is taken for 1.4 V at the bare output\n"
                        + "no direct voltage passes: the signal swings around the 0 V at which the pin rests\n"
                        + "droop below 765 mHz is undone, down to 7.65 mHz, as far as full scale allows\n");
    }

    @Test
    void whatTheRigCannotGiveIsRefusedWithTheLargestThatItCan() {
        Run.Outcome refused = render(wheel, "--rig", "bench", "--input", INPUT);
        assertThat(refused.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        // three teeth of 45 in 360 degrees: the mean of +/-1.2 V is -0.3 V, so the highs stand 1.5 V above it
        assertThat(refused.err()).isEqualTo("wheel: its output crank reaches 1.5 V to one side of its mean, more than the 720.6 mV"
                + " peak that rig bench gives at the pins of this input; add --fit to have all outputs scaled down alike\n");
        assertThat(wav).doesNotExist();
    }

    @Test
    void aRigThatBreaksItsLimitsNeverPlays() {
        Run.in(home).understudy("rig", "edit", "bench", "--series", "1k", "--shunt", "none");
        for (String[] command : new String[][] {
            {"play", wheel, "--fit", "--rig", "bench", "--input", INPUT, "--to", "silent", "--for", "200 ms"},
            {"render", wheel, "--fit", "--rig", "bench", "--input", INPUT, "--out", wav.toString()}}) {
            Run.Outcome refused = Run.in(home).understudy(command);
            assertThat(refused.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(refused.err()).startsWith("rig bench: ").contains("pin shorted to 24 V gives ")
                    .contains("the nearest values that keep the limits are series ");
            assertThat(refused.out()).isEmpty();
        }
        // unless the rig bears a reason, which is then said every time
        Run.in(home).understudy("rig", "edit", "bench", "--override-limit", "5 mA to 30 mA", "--because", "spare module");
        Run.Outcome raised = render(wheel, "--fit", "--rig", "bench", "--input", INPUT, "--for", "1 s");
        assertThat(raised.err()).isEmpty();
        assertThat(raised.out()).contains("raised above the standard 1 mA and 5 mA because: spare module");
    }

    @Test
    void aRehearsalGoesThroughTheRigAndSaysWhenFullScaleWasNotEnough() {
        Run.Outcome play = Run.in(home).understudy("play", wheel, "--fit", "--rig", "bench", "--input", INPUT, "--to", "silent",
                "--for", "300 ms", "--speed", "60 rpm");
        assertThat(play.err()).isEmpty();
        assertThat(play.exitCode()).isZero();
        // one turn a second behind a corner of 1 Hz needs far more than full scale
        assertThat(play.out()).contains("\nrig bench on resistive: ").containsPattern("\nfull scale was not enough for \\d+ samples: ")
                .contains("finished after ");
    }

    @Test
    void theRigsOwnDeviceMustBeThere() {
        try (understudy.store.Store store = understudy.store.Store.open(Run.in(home).folders().data().resolve("understudy.db"))) {
            understudy.store.NamedRig rig = store.rigs().find("bench");
            store.rigs().change("bench", new understudy.store.NamedRig(rig.name(),
                    java.util.Optional.of(new understudy.store.DeviceIdentity("Nowhere", "not plugged in", "", 2)), rig.output(),
                    false, rig.divider(), rig.lead(), rig.limits(), "", rig.created(), rig.changed()));
        }
        Run.Outcome play = Run.in(home).understudy("play", wheel, "--fit", "--rig", "bench", "--input", INPUT, "--for", "200 ms");
        assertThat(play.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(play.err()).isEqualTo(
                "--rig: its audio output \"Nowhere #2\" is not there; plug it in, or rehearse with --to silent\n");
        // a file or a rehearsal needs no device
        assertThat(render(wheel, "--fit", "--rig", "bench", "--input", INPUT, "--for", "200 ms").exitCode()).isZero();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            --rig;bench|--rig: the volts at the pins depend on the input too; add --input KIND; 'understudy input' lists the kinds
            --input;resistive|--input: it says nothing without a rig; add --rig NAME, or leave it out
            --rig;bunch;--input;resistive|there is no rig called "bunch"; there are: bench, unbuilt
            --rig;unbuilt;--input;resistive|--rig: unbuilt has no divider yet; choose one with 'understudy divider --rig unbuilt --input KIND --save', then build it
            --rig;bench;--input;two-wire-current|*--input: no passive rig can stand in for a two-wire active sensor*
            --rig;bench;--input;foo|*--input: "foo" is no kind of input*
            """)
    void whatCannotBeIsSaid(String typed, String said) {
        Run.in(home).understudy("rig", "make", "unbuilt");
        String[] words = (wheel + ";--fit;" + typed).split(";");
        Run.Outcome outcome = render(words);
        if (said.startsWith("*")) {
            assertThat(outcome.err()).startsWith(said.replace("*", ""));
        } else {
            assertThat(outcome.err()).isEqualTo(said + "\n");
        }
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(wav).doesNotExist();
    }

    @Test
    void whatAPatternWasPlayedWithIsOfferedAndUsedWhenAsked() {
        Run.Outcome first = Run.in(home).understudy("play", "crank-36-1-vr", "--rig", "bench", "--input", INPUT, "--fit", "--speed", "900 rpm",
                "--for", "0.1 s", "--to", "silent");
        assertThat(first.exitCode()).as(first.err()).isZero();
        Run.Outcome offered = Run.in(home).understudy("play", "crank-36-1-vr", "--for", "0.1 s", "--to", "silent");
        assertThat(offered.out()).startsWith("played last with --rig bench --input \"" + INPUT + "\" --fit --speed \"900 rpm\"; --last does so again\n")
                .doesNotContain("rig bench on");
        Run.Outcome again = Run.in(home).understudy("play", "crank-36-1-vr", "--last", "--for", "0.1 s", "--to", "silent");
        assertThat(again.out()).doesNotContain("played last").contains("rig bench on");
        assertThat(Run.in(home).understudy("play", "sine", "--last", "--to", "silent").err()).contains("--last: this pattern was not played");
    }
}
