package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.cli.terminal.ExitCode;
import understudy.rig.InputKind;
import understudy.text.Paragraph;

class InputCommandTest {

    @TempDir
    private Path home;

    private Run.Outcome input(String... words) {
        String[] all = new String[words.length + 1];
        all[0] = "input";
        System.arraycopy(words, 0, all, 1, words.length);
        return Run.in(home).understudy(all);
    }

    @ParameterizedTest
    @ValueSource(strings = {"vr", "VR", "inductive", "reluctor"})
    void theTradesWordsForAReluctorNameItsKinds(String word) {
        Run.Outcome outcome = Run.in(home).understudy("divider", "--input", word);
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(outcome.err()).startsWith("--input: \"" + word + "\" is no kind of input; a reluctor's input is one of reluctor-adaptive,")
                .contains("reluctor-biased-pair").doesNotContain("resistive");
    }

    @Test
    void everyKindIsListedWithWhereItsNumbersComeFrom() {
        Run.Outcome list = input();
        assertThat(list.exitCode()).isZero();
        assertThat(list.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(Paragraph.width()));
        for (InputKind kind : InputKind.values()) {
            assertThat(list.out()).contains(kind.label());
        }
        assertThat(list.out()).contains("""

                pulled-up-5-v
                  Hall or switch, pulled up to 5 V.
                  Taken for: pulled up to 5 V 5 % through 4.7 kohm 5 %; low below 2 V, high
                  above 3.8 V.
                  Usual in the trade, not checked: compare with a known-good sensor.
                """);
    }

    @Test
    void twoReadingsTellAPullUp() throws IOException {
        // 5 V behind 4.7 kohm; the meter's 10 Mohm beside it
        double open = 5 * 10e6 / (10e6 + 4700);
        double both = 1 / (1 / 10e3 + 1 / 10e6);
        double loaded = 5 * both / (both + 4700);
        String[] readings = {"--open", open + " V", "--with", "10k 1%", "--loaded", loaded + " V"};
        Run.Outcome found = input(readings);
        assertThat(found.err()).isEmpty();
        assertThat(found.out()).startsWith("volts of its own  5 V, between 4.94 V and 5.06 V\nresistance        4.7 kohm, between ")
                .contains("\nKinds that fit, the likeliest first:\n").contains("  pulled-up-5-v: Hall or switch, pulled up to 5 V. ");
        Map<String, Object> json = JSON.std.mapFrom(input(readings[0], readings[1], readings[2], readings[3], readings[4],
                readings[5], "--json").out());
        // the readings above are exact, so only rounding is left
        assertThat(((Number) json.get("ohms")).doubleValue()).isCloseTo(4700, within(0.01));
        assertThat(((Number) json.get("openVolts")).doubleValue()).isCloseTo(5, within(1e-6));
    }

    @Test
    void whatIsOutOfReachIsSaid() {
        assertThat(input("--open", "12 V", "--with", "1k 1%", "--loaded", "4 V").out())
                .contains("two-wire-current: a two-wire active sensor. No rig can stand in for its\n    sensor.\n");
        assertThat(input("--open", "12 V", "--with", "1k 1%", "--loaded", "11.99 V").out())
                .contains("No known kind fits.\n").contains("Stop: this is a supply, not an input.");
        assertThat(input("--open", "0.01 V", "--with", "1k 1%", "--loaded", "0 V").out()).contains("resistance        not known\n");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            --with;10k|--open: it is missing; give the reading on the bare pin, like --open "4.96 V"\\n--loaded: it is missing; give the reading with the resistor, like --loaded "3.31 V"
            --open;5 V;--loaded;3 V|--with: it is missing; give the known resistor, like --with "10k 1%"
            --open;1,500;--with;10k;--loaded;3 V|--open: "1,500" could be 1.500 or 1500; write 1.500 or 1500
            --open;100 V;--with;10k;--loaded;3 V|--open: 100 V is out of range; allowed are -60 V to 60 V
            --open;-5 V;--with;10k;--loaded;3 V|input: the reading without the resistor is given as -5 V; allowed are 0 V to 60 V
            --open;3 V;--with;10k;--loaded;5 V|input: the reading rises from 3 V to 5 V with a resistor to ground; swap the two readings, or measure again: something else moves the voltage
            --open;5 V;--with;10 ohm;--loaded;3 V|input: the known resistor is given as 10 ohm; allowed are 1 kohm to 10 Mohm
            --open;5 V;--with;10k;--loaded;3 V;--meter-ohms;5 ohm|--meter-ohms: the meter's input resistance is given as 5 ohm; allowed are 10 kohm to 1 Gohm
            """)
    void readingsThatCannotBe(String typed, String said) {
        Run.Outcome outcome = input(typed.split(";"));
        assertThat(outcome.err()).isEqualTo(said.replace("\\n", "\n") + "\n");
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
    }
}
