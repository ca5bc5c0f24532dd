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
import understudy.text.Paragraph;

/** What the command says of a divider, judged by that divider's formulas; the search itself is tested beside it. */
class DividerCommandTest {

    private static final String[] EXACT_OUTPUT = {"--full-scale", "1.4 V 0%", "--output-ohms", "100 ohm 0%", "--pop", "2 V"};

    @TempDir
    private Path home;

    private Run.Outcome divider(String... words) {
        String[] all = new String[words.length + 1];
        all[0] = "divider";
        System.arraycopy(words, 0, all, 1, words.length);
        return Run.in(home).understudy(all);
    }

    private static String[] with(String[] some, String... more) {
        String[] all = new String[some.length + more.length];
        System.arraycopy(some, 0, all, 0, some.length);
        System.arraycopy(more, 0, all, some.length, more.length);
        return all;
    }

    private static double number(Map<String, Object> map, String key) {
        return ((Number) map.get(key)).doubleValue();
    }

    @Test
    void theNumbersOfABuildAreThoseOfItsCircuit() throws IOException {
        Run.Outcome judged = divider(with(EXACT_OUTPUT, "--input", "resistive, resistance: 100k 0%", "--series", "10k 0%",
                "--shunt", "12k 0%", "--json"));
        assertThat(judged.err()).isEmpty();
        Map<String, Object> all = JSON.std.mapFrom(judged.out());
        double behind = 1 / (1 / 12e3 + 1 / 100_000.2); // two wires of 0.1 ohm on the way to the pin
        double gain = behind / (10_100 + behind);
        // three digits more than any meter has; the model's 1e9 ohm across what is open cost 1e-5
        assertThat(number(all, "pinHighVolts")).isCloseTo(1.4 * gain, within(1e-4));
        assertThat(number(all, "pinLowVolts")).isCloseTo(-1.4 * gain, within(1e-4));
        assertThat(number(all, "worstMarginVolts")).isCloseTo(1.4 * gain - 0.1, within(1e-4));
        double source = 1 / (1 / 10_100.0 + 1 / 12e3) + 0.2;
        assertThat(number(all, "sourceOhms")).isCloseTo(source, within(1.0));
        assertThat(number(all, "directOhms")).as("the output's capacitor leaves the shunt").isCloseTo(12_000.2, within(1.0));
        // shorted to 24 V while the source is at -1.4 V, the capacitor still empty: all through the source resistance
        double worst = (24 + 1.4 * 12e3 / 22_100) / source;
        Map<?, ?> shorted = (Map<?, ?>) ((List<?>) all.get("states")).get(7);
        assertThat(shorted.get("state")).isEqualTo("SHORT_TO_24_V");
        assertThat(((Number) shorted.get("clipAmps")).doubleValue()).isCloseTo(worst, within(worst * 0.001));
        assertThat(all.get("worstState")).isEqualTo("SHORT_TO_24_V");
    }

    @Test
    void theReportTellsPartsVoltsCurrentsAndWorst() {
        Run.Outcome found = divider("--input", "reluctor-adaptive");
        assertThat(found.exitCode()).isZero();
        assertThat(found.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(Paragraph.width()));
        assertThat(found.out()).startsWith("input: reluctor-adaptive, 20 kohm 20 % to ground; needs 75 mV either way")
                .contains("resistances\n  usual in the trade, not checked: compare with a known-good sensor.\n")
                .contains("\nR1      series    ").contains("\nR2      shunt     ").contains("ground clip, FIRST\n")
                .contains("\nnormal use ").contains("\nfirst touch ").contains("\npower-up pop ")
                .contains("\npin shorted to 24 V ").contains("\nLimits: 1 mA in normal use, 5 mA in any single fault.\n")
                .contains("\nWorst: pin shorted to 24 V, ").contains("\nCaution: The input may report an open circuit: ");
    }

    @Test
    void aBuildThatBreaksALimitIsRefusedWithTheNearestThatWouldDo() {
        String[] short1k = {"--input", "reluctor-adaptive", "--series", "1k", "--shunt", "2k"};
        Run.Outcome refused = divider(short1k);
        assertThat(refused.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(refused.out()).isEmpty();
        assertThat(refused.err()).contains("pin shorted to 24 V gives ").contains(" through a clip, the limit is 5 mA")
                .contains("; the nearest values that keep the limits are series ").endsWith("\n");
        // and what it names does keep them
        var named = java.util.regex.Pattern.compile("are series ([\\d.]+ k?ohm), shunt ([\\d.]+ k?ohm)").matcher(refused.err());
        assertThat(named.find()).isTrue();
        assertThat(divider("--input", "reluctor-adaptive", "--series", named.group(1), "--shunt", named.group(2)).exitCode())
                .isZero();
        // raised on purpose, with a reason, it is let through, and says so
        Run.Outcome raised = divider(with(short1k, "--override-limit", "5 mA to 50 mA", "--because", "a spare module"));
        assertThat(raised.err()).isEmpty();
        assertThat(raised.out()).contains("\nLimits: 1 mA in normal use, 50 mA in any single fault; raised above the standard\n"
                + "  1 mA and 5 mA because: a spare module.\n");
    }

    @Test
    void lowerLimitsAreKeptToo() throws IOException {
        Map<String, Object> all = JSON.std.mapFrom(
                divider("--input", "reluctor-adaptive", "--limit-fault", "2 mA", "--json").out());
        assertThat((List<?>) all.get("states")).allSatisfy(state ->
                assertThat(((Number) ((Map<?, ?>) state).get("judgedAmps")).doubleValue()).isLessThanOrEqualTo(2e-3));
    }

    @Test
    void whatIsFoundIsKeptInTheRigAndDrawn() throws IOException {
        Run.in(home).understudy("rig", "make", "bench", "--full-scale", "1.4 V 2%");
        Path drawing = home.resolve("box.svg");
        Run.Outcome saved = divider("--rig", "bench", "--input", "reluctor-adaptive", "--save", "--drawing", drawing.toString(),
                "--limit-fault", "4 mA");
        assertThat(saved.err()).isEmpty();
        assertThat(saved.out()).endsWith("drawn in " + drawing + "\nkept in rig bench; if you build it otherwise, say so with\n"
                + "'understudy rig edit bench'\n");
        assertThat(Files.readString(drawing)).startsWith("<svg ").endsWith("</svg>\n");
        String series = saved.out().replaceAll("(?s).*\\nR1 +series +(\\S+ \\S+) 1 %.*", "$1");
        assertThat(Run.in(home).understudy("rig", "show", "bench").out()).contains("\ndivider  series " + series + " 1 %, shunt ")
                .contains("\nlimits   1 mA in normal use, 4 mA in any single fault\n");
    }

    @Test
    void whatNoRigCanDoIsRefusedWithTheReason() {
        for (String kind : new String[] {"two-wire-current", "pulled-up-8-to-12-v", "direct-voltage", "digital-protocol", "resolver"}) {
            Run.Outcome refused = divider("--input", kind);
            assertThat(refused.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(refused.err()).startsWith("--input: no passive rig can stand in for ").contains(": ");
        }
        assertThat(divider("--input", "pulled-up-5-v, supply: 12 V, low: 3 V, high: 7 V").err())
                .startsWith("no passive rig can stand in for an input pulled up to 8 V or more (this one: 12 V)");
        assertThat(divider("--input", "pulled-up-5-v").err()).startsWith("no series and shunt resistor of E24 make this input switch");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            --input;reluctor-adaptve|--input: "reluctor-adaptve" is no kind of input; did you mean reluctor-adaptive?
            --input;pulled-up-5-v, pullup: 2k|--input: pulled-up-5-v has no "pullup"; it can have supply, pull-up, low, high, series, filter
            --input;pulled-up-5-v, low: 4 V, high: 3 V|--input: the thresholds are given as low below 4.0 V and high above 3.0 V; both must lie between 0 V and the supply of 5 V, the low one below the high one
            --input;resistive, resistance: -3 kohm|--input: -3 kohm is out of range; allowed are 1 ohm to 100 Mohm
            --input;resistive, needs: 1 V, needs: 2 V|--input: "needs" is there twice; leave one of them out
            --input;resistive;--values;E7|--values: "E7" is no series of preferred values; give E12, E24 or E96
            --input;resistive;--tolerance;50 %|--tolerance: 50 % is out of range; allowed are 0 % to 20 %
            --input;resistive;--corner;2 kg|--corner: the unit "kg" is not known; write a frequency like 100 Hz
            --input;resistive;--duty;0 %|--duty: 0 % is out of range; allowed are 1 % to 99 %
            --input;resistive;--duty;50 % to 10 %|--duty: "50 % to 10 %" runs downwards; write the smaller part first, like "10 % to 50 %"
            --input;resistive;--shunt;2k|--series: it is missing; give the series resistor too: without one nothing limits the current
            --input;resistive;--save|--save: it needs a rig to save into; add --rig NAME
            --input;resistive;--rig;bench|there is no rig called "bench"; make one: 'understudy rig make NAME'
            --input;resistive;--drawing;box.png|--drawing: "box.png" is no name for a picture; give a name that ends in .svg
            --input;resistive;--drawing;nowhere/box.svg|*--drawing: there is no folder *
            """)
    void whatCannotBeIsSaid(String typed, String said) {
        Run.Outcome outcome = divider(typed.split(";"));
        if (said.startsWith("*")) {
            assertThat(outcome.err()).startsWith(said.replace("*", ""));
        } else {
            assertThat(outcome.err()).isEqualTo(said + "\n");
        }
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
    }
}
