package understudy.guide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.refusal.Refused;
import understudy.rig.Assessment;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.CurrentLimits;
import understudy.rig.Divider;
import understudy.rig.DividerSearch;
import understudy.rig.FrontEnd;
import understudy.rig.Input;
import understudy.rig.InputKind;
import understudy.rig.Lead;
import understudy.rig.Meter;
import understudy.rig.Preferred;
import understudy.rig.PulledUpInput;
import understudy.rig.Spread;
import understudy.rig.UnknownInput;
import understudy.rig.Use;

/** What the pages say was computed, computed again: by the formula where there is one, else by the program that it tells of. */
class NumbersTest {

    private static final double PEAK_OF_ONE_VOLT_RMS = Math.sqrt(2);

    /** The number that stands where the brackets of {@code place} are, against the truth. */
    private static void says(String page, String place, double truth) {
        Matcher found = Pattern.compile(place).matcher(PageTest.words(Guide.find(page).orElseThrow()));
        assertThat(found.find()).as(page + ": " + place).isTrue();
        String digits = found.group(1);
        int decimals = digits.contains(".") ? digits.length() - digits.indexOf('.') - 1 : 0;
        // rounded to the digits shown: off by half of the last one at most, and by what binary fractions add
        double half = 0.5 * Math.pow(10, -decimals) + 1e-9;
        assertThat(Double.parseDouble(digits)).as(page + ": " + place).isCloseTo(truth, Offset.offset(half));
        assertThat(found.find()).as("found twice: " + page + ": " + place).isFalse();
    }

    private static double cornerHz(double ohms, double farads) {
        return 1 / (2 * Math.PI * ohms * farads);
    }

    @Test
    void resistorsAgainstABattery() {
        says("box", "that is ([\\d.]+) kohm for 1 mA", (16 - 0.6) / 1e-3 / 1e3);
        says("box", "and ([\\d.]+) kohm for 5 mA", (16 - 0.6) / 5e-3 / 1e3);
        says("box", "From 16 V, 1 kohm turns ([\\d.]+) W", 16 * 16 / 1e3);
        says("box", "2 kohm would let ([\\d.]+) mA", 16 / 2e3 * 1e3);
        says("before", "\n*The limit that the box must keep: ([\\d.]+) mA", CurrentLimits.STANDARD.normalAmps() * 1e3);
        says("before", "in normal use, ([\\d.]+) mA", CurrentLimits.STANDARD.faultAmps() * 1e3);
    }

    @Test
    void worstCurrentsOfTheOnePinBox() {
        // all of it through R2, and through R1 with full scale, 20 % up, against the battery; parts 1 %, output 50 %, down
        double r2 = 0.99 * 11e3;
        double r1 = 0.99 * 10e3 + 0.5 * 100;
        double peak = 1.2 * PEAK_OF_ONE_VOLT_RMS;
        says("box", "lets ([\\d.]+) mA through at 16 V", 1e3 * (16 / r2 + (16 + peak) / r1));
        says("box", "and ([\\d.]+) mA at 24 V", 1e3 * (24 / r2 + (24 + peak) / r1));
        assertThat(24 / r2 + (24 + peak) / r1).as("the box keeps the limit that the page tells").isLessThan(CurrentLimits.STANDARD.faultAmps());
    }

    @Test
    void transformerCorner() {
        says("box", "2 H that is ([\\d.]+) Hz", 100 / (2 * Math.PI * 2));
    }

    @ParameterizedTest
    @CsvSource({
        "reluctor-adaptive, RELUCTOR_ADAPTIVE", "reluctor-hysteresis, RELUCTOR_HYSTERESIS",
        "reluctor-biased-pair, RELUCTOR_BIASED_PAIR", "reluctor-adaptive-pair, RELUCTOR_ADAPTIVE_PAIR", "resistive, RESISTIVE"})
    void theTableOfBoxesIsWhatTheSearchFinds(String name, InputKind kind) {
        Assessment best = search(AudioOutput.NOMINAL, kind.usual()).assessment();
        Divider divider = best.rig().divider();
        String row = "\n" + name + " \\| ";
        says("box", row + "([\\d.]+) kohm", divider.seriesOhms().nominal() / 1e3);
        String series = row + "[^|]*\\| ";
        if (divider.shuntOhms().isPresent()) {
            says("box", series + "([\\d.]+) kohm", divider.shuntOhms().get().nominal() / 1e3);
        } else {
            assertThat(PageTest.words(Guide.find("box").orElseThrow())).containsPattern(series + "none \\|");
        }
        String shunt = series + "[^|]*\\| ";
        if (divider.coupling() instanceof Coupling.Capacitor capacitor) {
            says("box", shunt + "([\\d.]+) uF", capacitor.farads().nominal() * 1e6);
        } else {
            assertThat(PageTest.words(Guide.find("box").orElseThrow())).containsPattern(shunt + "none \\|");
        }
        says("box", shunt + "[^|]*\\| ([\\d.]+) V peak", best.levels().pinHighVolts());
    }

    private static AudioOutput output(double peakVolts) {
        return new AudioOutput(new Spread(peakVolts, 0.02), new Spread(100, 0.1),
                Optional.of(new Spread(10e-6, 0.2)), false, AudioOutput.USUAL_POP_VOLTS);
    }

    private static DividerSearch.Design search(AudioOutput output, Input input) {
        return DividerSearch.best(new DividerSearch.Request(output, Lead.USUAL, input, Use.FULL, Preferred.E24, 0.01, 2,
                CurrentLimits.STANDARD, Optional.empty()));
    }

    @Test
    void whichPullUpsAreInReach() {
        assertThat(PageTest.words(Guide.find("reach").orElseThrow())).contains(
                "1.0 V rms fails on a pull-up of 10 kohm or less. 3.0 V rms, the strongest there is, does for 10 kohm, yet fails"
                        + " on 4.7 kohm or less.");
        AudioOutput usual = output(PEAK_OF_ONE_VOLT_RMS);
        AudioOutput strongest = output(3 * PEAK_OF_ONE_VOLT_RMS);
        for (double ohms : new double[] {1e3, 4.7e3, 10e3}) {
            assertThatThrownBy(() -> search(usual, pulledUp(ohms))).isInstanceOf(Refused.class);
        }
        for (double ohms : new double[] {1e3, 4.7e3}) {
            assertThatThrownBy(() -> search(strongest, pulledUp(ohms))).isInstanceOf(Refused.class);
        }
        assertThat(search(strongest, pulledUp(10e3)).assessment().marginVolts()).isPositive();
    }

    private static Input pulledUp(double ohms) {
        return new PulledUpInput(new Spread(5, 0.05), new Spread(ohms, 0.05), 2.0, 3.8, FrontEnd.BARE);
    }

    @Test
    void aBareJackOnAPullUp() {
        says("reach", "1.0 V rms is ([\\d.]+) V peak", PEAK_OF_ONE_VOLT_RMS);
        says("reach", "moves between ([\\d.]+) and", 5 - PEAK_OF_ONE_VOLT_RMS);
        says("reach", "moves between [\\d.]+ and ([\\d.]+) V", 5 + PEAK_OF_ONE_VOLT_RMS);
    }

    @Test
    void theMeterExample() {
        says("input", "= ([\\d.]+) kohm: 5 V", 10 * (4.96 / 3.31 - 1));
        UnknownInput found = UnknownInput.from(4.96, new Spread(10e3, 0.01), 3.31, Meter.USUAL);
        assertThat(found.kinds()).containsExactly(InputKind.PULLED_UP_5_V);
    }

    @ParameterizedTest
    @CsvSource({
        "0.2, 0.1, RELUCTOR_ADAPTIVE", "1.4, 1.3, RELUCTOR_BIASED_PAIR", "2.5, 2.3, RELUCTOR_BIASED_PAIR",
        "5.0, 3.3, PULLED_UP_5_V", "8.0, 6.7, PULLED_UP_8_TO_12_V", "12.0, 9.0, PULLED_UP_8_TO_12_V"})
    void theTableOfReadingsIsWhatTheProgramSays(double openVolts, double loadedVolts, InputKind kind) {
        assertThat(UnknownInput.from(openVolts, new Spread(10e3, 0.01), loadedVolts, Meter.USUAL).kinds()).contains(kind);
    }

    @Test
    void aVoltageThatHardlyDropsIsASupply() {
        assertThat(UnknownInput.from(5, new Spread(1e3, 0.01), 4.99, Meter.USUAL).advice())
                .anySatisfy(advice -> assertThat(advice).startsWith("Stop: this is a supply"));
    }

    @Test
    void pulledUpWiring() {
        says("wiring", "2.9 V in the middle that is ([\\d.]+) kohm", 1 * 2.9 / (5 - 2.9));
        // up and down make the whole swing, and duty x up = (1 - duty) x down, since there is no mean
        double duty = 0.1;
        says("wiring", "goes ([\\d.]+) of its swing up", 1 - duty);
        says("wiring", "swing up and ([\\d.]+) down", duty);
    }

    @Test
    void cornersOfTheOutput() {
        says("audio", "below ([\\d.]+) Hz into 32 ohm", cornerHz(32, 220e-6));
        says("audio", "below ([\\d.]+) Hz into 10 kohm", cornerHz(10e3, 220e-6));
    }

    @Test
    void outputResistance() {
        says("calibrate", "with 1 kohm is ([\\d.]+) ohm", 1000 * (1.00 / 0.95 - 1));
    }

    @Test
    void droopOfASquareWave() {
        // what an exponential of that corner loses in half a period
        says("preflight", "square wave loses ([\\d.]+) %", 100 * (1 - Math.exp(-Math.PI * 2 / 3.3)));
        says("preflight", "([\\d.]+) % at 10 Hz", 100 * (1 - Math.exp(-Math.PI * 2 / 10)));
        says("preflight", "([\\d.]+) % at 100 Hz", 100 * (1 - Math.exp(-Math.PI * 2 / 100)));
    }

    @Test
    void theInputsFilter() {
        double cornerHz = cornerHz(15e3, 47e-9);
        says("preflight", "above ([\\d.]+) Hz; at 2 kHz", cornerHz);
        says("preflight", "down to ([\\d.]+) V", PEAK_OF_ONE_VOLT_RMS / Math.hypot(1, 2000 / cornerHz));
    }

    @Test
    void aCornerMakesCrossingsComeEarly() {
        // among neighbours a reluctor's wave is a sine at the tooth rate, nearly; a first-order corner leads it by atan(corner/rate)
        says("preflight", "leads by ([\\d.]+) deg on a wheel 60-2", 6 * Math.atan(20 / (200 / 60.0 * 60)) / (2 * Math.PI));
        says("preflight", "and by ([\\d.]+) deg on one of 12-1", 30 * Math.atan(20 / (200 / 60.0 * 12)) / (2 * Math.PI));
    }

    @ParameterizedTest
    @CsvSource({"'60-2, 36-2', 2", "'36-1, 24-1, 12-1', 1"})
    void swappedPolarity(String wheels, int missing) {
        // right: at the teeth. Reversed: in the middle of each space; the long one lies between the two teeth beside the gap
        double right = missing + 1;
        double reversed = (missing + 1) / 2.0 + 0.5;
        String row = "\n" + wheels + " \\| ";
        says("preflight", row + "one of ([\\d.]+) a turn", right);
        says("preflight", row + "[^|]*\\| two of ([\\d.]+),", reversed);
        says("preflight", row + "[^|]*\\| two of [\\d.]+, none of ([\\d.]+)", right);
    }

    @Test
    void readings() {
        double rollsMetres = 3.05 * (16 * 25.4 + 2 * 205 * 0.55) / 1000;
        says("reading", "205/55R16 rolls ([\\d.]+) m a turn", rollsMetres);
        says("reading", "36-1 at 600 rpm gives ([\\d.]+) Hz", 600 / 60.0 * 36);
    }
}
