package understudy.preflight;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import understudy.pattern.Tone;
import understudy.quantity.Dimension;
import understudy.quantity.Quantity;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.Divider;
import understudy.rig.InputKind;
import understudy.rig.Lead;
import understudy.rig.ReluctorInput.Edge;
import understudy.rig.Rig;
import understudy.rig.Spread;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;

/** What would widen a range is done, as it is told, and looked at: the range then reaches where it was said to. */
class WideningTest {

    private static RangeEnd.Widening that(RangeEnd end, String begins) {
        return end.widenings().stream().filter(wider -> wider.remedy().text(Wording.NEUTRAL).startsWith(begins)).findFirst()
                .orElseThrow(() -> new AssertionError(begins + " is not among " + end.widenings()));
    }

    /** Both ends are bisected to 0.4 %, one from below and one from above. */
    private static void same(double saidHz, double foundHz) {
        assertThat(foundHz / saidHz).isBetween(0.992, 1.008);
    }

    @Test
    void aHigherRate() {
        Setup setup = Bench.setup(Bench.pattern(Bench.hall(36, 1, 1), 150, 170, 900), Bench.rig(0), Bench.hysteresis(0.5, Edge.RISING));
        RangeEnd high = Preflight.of(setup, 170, part -> {}).high().orElseThrow();
        same(that(high, "sample rate 96000").speedHz(),
                Preflight.rangeOnly(setup.withRate(96_000), 170).high().orElseThrow().speedHz());
    }

    @Test
    void otherResistors() {
        // half of the volts that would do: the series resistor is three times what the limits ask for
        Rig weak = new Rig(AudioOutput.NOMINAL, new Divider(new Spread(33e3, 0.01),
                Optional.of(new Spread(11e3, 0.01)), new Coupling.Direct()), Lead.USUAL);
        Setup setup = Bench.setup(Bench.pattern(Bench.coil(36, 1, 0.2, 0.3, 3), 5, 90, 100), weak,
                InputKind.RELUCTOR_ADAPTIVE.usual()).fitted();
        RangeEnd low = Preflight.of(setup, 90, part -> {}).low().orElseThrow();
        RangeEnd.Widening parts = that(low, "series ");
        Matcher told = Pattern.compile("series (.+ohm), shunt (.+ohm), and fitting").matcher(parts.remedy().text(Wording.NEUTRAL));
        assertThat(told.matches()).as(parts.remedy().text(Wording.NEUTRAL)).isTrue();
        Rig built = weak.withDivider(new Divider(new Spread(Quantity.parse(told.group(1), Dimension.RESISTANCE).base(), 0.01),
                Optional.of(new Spread(Quantity.parse(told.group(2), Dimension.RESISTANCE).base(), 0.01)), new Coupling.Direct()));
        same(parts.speedHz(), Preflight.rangeOnly(setup.withRig(built).fitted(), 90).low().orElseThrow().speedHz());
        assertThat(parts.speedHz()).isLessThan(0.8 * low.speedHz());
    }

    @Test
    void aLargerCapacitor() {
        Rig direct = Bench.rig(0);
        Coupling small = new Coupling.Capacitor(Spread.exactly(0.265e-6)); // on 10 kohm: 60 Hz
        Rig rig = direct.withDivider(new Divider(direct.divider().seriesOhms(), Optional.empty(), small));
        Setup setup = Bench.setup(Bench.pattern(Bench.tone(Tone.Shape.SINE, 0.5, 1), 1.5, 30, 40), rig,
                Bench.hysteresis(0.3, Edge.RISING)).withCorrection(false);
        RangeEnd low = Preflight.of(setup, 30, part -> {}).low().orElseThrow();
        assertThat(low.limit()).contains(Limit.DROOP);
        RangeEnd.Widening larger = that(low, "a coupling capacitor ten times as large, 2.65 uF");
        // f/sqrt(f^2 + fc^2) = 0.3, with a tenth of the corner
        same(larger.speedHz(), low.speedHz() / 10);
    }

    @Test
    void volts() {
        // volts rise with speed to 2 V at 20 turns a second; fixed thresholds end that at the slow side
        Setup setup = Bench.setup(Bench.pattern(Bench.coil(12, 1, 0.3, 1, 2), 2, 15, 20), Bench.rig(0),
                Bench.hysteresis(0.3, Edge.FALLING));
        RangeEnd low = Preflight.of(setup, 15, part -> {}).low().orElseThrow();
        assertThat(low.limit()).contains(Limit.THRESHOLD);
        RangeEnd.Widening law = that(low, "volts that rise faster with speed: 2 V peak to peak already at 2 Hz");
        assertThat(law.speedHz()).isEqualTo(2);
        Setup steep = Bench.setup(Bench.pattern(Bench.coil(12, 1, 0.3, 2 * 10 / 2.0, 2), 2, 15, 20), Bench.rig(0),
                Bench.hysteresis(0.3, Edge.FALLING));
        assertThat(Preflight.rangeOnly(steep, 15).low().orElseThrow().speedHz()).isEqualTo(2);
        // more of them all the way does it too
        RangeEnd.Widening more = that(low, "fitting: ");
        same(more.speedHz(), Preflight.rangeOnly(setup.fitted(), 15).low().orElseThrow().speedHz());
    }

    @Test
    void theOtherWayRound() {
        Setup setup = Bench.setup(Bench.pattern(Bench.coil(36, 1, 0.3, 2, 2), 5, 10, 20), Bench.rig(0),
                Bench.hysteresis(0.3, Edge.FALLING)).withSwapped(true);
        Preflight found = Preflight.of(setup, 10, part -> {});
        assertThat(found.low()).isEmpty();
        assertThat(found.remedies()).first().isEqualTo(Remedy.of("swap the two clips, or the polarity of what is played"));
        assertThat(Preflight.rangeOnly(setup.withSwapped(false), 10).high().orElseThrow().speedHz()).isEqualTo(20);
    }
}
