package understudy.preflight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.pattern.Fault;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.PatternLibrary;
import understudy.pattern.Tone;
import understudy.pattern.When;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.rig.Arming;
import understudy.rig.AudioOutput;
import understudy.rig.Input;
import understudy.rig.ReluctorInput.Edge;
import understudy.rig.Rig;
import understudy.rig.Spread;

class PreflightTest {

    private static final List<Setup> SMALL = List.of(
            // a coil whose volts rise with speed, on fixed thresholds
            Bench.setup(Bench.pattern(Bench.coil(12, 1, 0.3, 0.5, 2), 5, 10, 20), Bench.rig(0),
                    Bench.hysteresis(0.2, Edge.FALLING)),
            // a filter that takes fast signals away
            Bench.setup(Bench.pattern(Bench.tone(Tone.Shape.SINE, 0.5, 1.41), 1000, 1500, 4000), Bench.rig(0), Bench.input(
                    new Arming.Hysteresis(-0.16, 0.16), Edge.RISING, 15e3, Optional.of(Spread.exactly(47e-9)))),
            // droop that takes slow ones
            Bench.setup(Bench.pattern(Bench.tone(Tone.Shape.SINE, 0.5, 1), 5, 7, 8), Bench.rig(20),
                    Bench.hysteresis(0.3, Edge.RISING)).withCorrection(false),
            // teeth that run into each other at this rate
            Bench.setup(Bench.pattern(Bench.hall(36, 1, 1), 150, 170, 250), Bench.rig(0), Bench.hysteresis(0.5, Edge.RISING)));

    private static double chosenHz(Setup setup) {
        return setup.pattern().speed().defaultHz();
    }

    /** Every speed in steps of 0.1 %, one by one; the answer may be off by 1 %, and is promised to be on the safe side. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void theRangeIsWhatTryingEverySpeedFinds(int which) {
        Setup setup = SMALL.get(which);
        Preflight found = Preflight.rangeOnly(setup, chosenHz(setup));
        double lowest = Double.NaN;
        double highest = Double.NaN;
        for (double hz = setup.pattern().speed().fromHz(); hz <= setup.pattern().speed().toHz(); hz *= 1.001) {
            if (Decoding.of(setup, hz).isDecoded()) {
                lowest = Double.isNaN(lowest) ? hz : lowest;
                highest = hz;
            }
        }
        double all = setup.pattern().speed().toHz() / setup.pattern().speed().fromHz();
        assertThat(highest / lowest).as("both sides of an end are seen").isBetween(1.1, 0.9 * all);
        assertThat(found.low().orElseThrow().speedHz() / lowest).isCloseTo(1, within(0.01));
        assertThat(found.high().orElseThrow().speedHz() / highest).isCloseTo(1, within(0.01));
    }

    @Test
    void aCoilIsTooSmallBelowTheSpeedAtWhichItsLeastPeakMeetsTheThreshold() {
        Preflight found = Preflight.of(SMALL.get(0), chosenHz(SMALL.get(0)), part -> {});
        // the least peak to either side of any of its 11 teeth, at 10 Hz
        double least = 1;
        for (int tooth = 0; tooth < 11; tooth++) {
            double high = 0;
            double low = 0;
            for (double deg = 0; deg <= 15; deg += 0.01) {
                high = Math.max(high, Bench.coilVolts(12, 1, 0.3, 0.5, 30 * tooth - deg));
                low = Math.max(low, -Bench.coilVolts(12, 1, 0.3, 0.5, 30 * tooth + deg));
            }
            least = Math.min(least, Math.min(high, low));
        }
        double expectedHz = 10 * 0.2 / least;
        RangeEnd low = found.low().orElseThrow();
        assertThat(low.speedHz() / expectedHz).isCloseTo(1, within(0.005)); // bisected to 0.4 %, and 0.02 % of the swing
        assertThat(low.limit()).contains(Limit.THRESHOLD);
        assertThat(low.widenings().get(0).speedHz()).isEqualTo(5);
        assertThat(found.high().orElseThrow().limit()).contains(Limit.PATTERN);
        assertThat(found.summary()).matches("decodes from [\\d.]+ Hz to 20 Hz on this input; [\\d.]+ mV to spare at 10 Hz");
    }

    @Test
    void aFilterEndsTheRangeByBandwidth() {
        RangeEnd high = Preflight.of(SMALL.get(1), chosenHz(SMALL.get(1)), part -> {}).high().orElseThrow();
        assertThat(high.speedHz()).isBetween(1850.0, 2050.0); // some 2 kHz: JudgementTest has the closed form
        assertThat(high.limit()).contains(Limit.BANDWIDTH);
    }

    @Test
    void droopEndsTheRangeWhereTheHighPassSays() {
        Setup setup = SMALL.get(2);
        Preflight found = Preflight.of(setup, chosenHz(setup), part -> {});
        RangeEnd low = found.low().orElseThrow();
        // f/sqrt(f^2 + 20^2) = 0.3; bisected to 0.4 %
        assertThat(low.speedHz() / (20 * 0.3 / Math.sqrt(1 - 0.09))).isCloseTo(1, within(0.006));
        assertThat(low.limit()).contains(Limit.DROOP);
        assertThat(low.widenings().get(0)).isEqualTo(new RangeEnd.Widening(Remedy.of("have the droop undone"), 5));
    }

    @Test
    void aRateEndsTheRangeOfEdgesAndAHigherOneWidensIt() {
        RangeEnd high = Preflight.of(SMALL.get(3), chosenHz(SMALL.get(3)), part -> {}).high().orElseThrow();
        assertThat(high.limit()).contains(Limit.BANDWIDTH);
        RangeEnd.Widening best = high.widenings().get(0);
        assertThat(best.remedy().text(Wording.NEUTRAL)).startsWith("sample rate ");
        assertThat(best.speedHz()).isEqualTo(250); // at twice the rate, twice the speed
        // what the edge kernel of 1.5 frames leaves of the fundamental, 4/pi of the teeth's volts, meets the threshold of a half;
        // the third harmonic has 2e-4 left; bisected to 0.4 %
        double expectedHz = Bench.RATE_HZ / (2 * Math.PI * 1.5 * 36) * Math.sqrt(2 * Math.log(8 / Math.PI));
        assertThat(high.speedHz() / expectedHz).isCloseTo(1, within(0.006));
    }

    @Test
    void theLastBitOfThePatternsRangeIsWorthAWord() {
        // 192.9 Hz are decoded, as above
        Setup setup = Bench.setup(
                Bench.pattern(Bench.hall(36, 1, 1), 150, 170, 196), Bench.rig(0), Bench.hysteresis(0.5, Edge.RISING));
        RangeEnd high = Preflight.of(setup, 170, part -> {}).high().orElseThrow();
        assertThat(high.limit()).contains(Limit.BANDWIDTH);
        assertThat(high.widenings().get(0).speedHz()).isEqualTo(196);
    }

    @ParameterizedTest
    @ValueSource(strings = {"crank-36-1-vr", "crank-60-2-vr"})
    void swappedPolarityIsRecognisedByItsSignatureAndSwappingBackCuresIt(String id) {
        Pattern pattern = PatternLibrary.open().find(id).value().orElseThrow();
        Fault swap = new Fault.SwappedPolarity(new Fault.Place("swap", "crank", When.ALWAYS, true));
        Input input = Bench.hysteresis(0.2, Edge.FALLING);
        Setup setup = Setup.of(pattern.withFaults(List.of(swap)), pattern.outputs().get(0), Bench.rig(10), input, Bench.RATE_HZ);
        Preflight found = Preflight.of(setup, chosenHz(setup), part -> {});
        assertThat(found.low()).isEmpty();
        assertThat(found.chosen().worst().verdict()).isEqualTo(DecodingVerdict.SWAPPED);
        assertThat(found.chosen().worst().countedPerTurn()).isEqualTo(found.chosen().worst().expectedPerTurn());
        assertThat(found.chosen().worst().marginVolts()).isPositive();
        assertThat(found.reason()).contains(Limit.POLARITY);
        assertThat(found.remedies()).containsExactly(Remedy.of("swap the two clips, or the polarity of what is played"));
        assertThat(Preflight.rangeOnly(setup.withSwapped(true), chosenHz(setup)).high()).isPresent();
        assertThat(found.overview().stream().map(at -> at.worst().verdict()).collect(Collectors.toSet()))
                .contains(DecodingVerdict.SWAPPED).doesNotContain(DecodingVerdict.DECODED);
    }

    @Test
    void swappedWiresAreSeenEvenWhereThresholdsMakeTheGapFit() {
        // a narrow pole is flat in the middle of the gap: there a threshold shifts the edge by a quarter of a pitch
        Setup setup = Bench.setup(Bench.coil(36, 1, 0.2, 2, 2), Bench.rig(0), Bench.hysteresis(0.4, Edge.FALLING));
        assertThat(Decoding.of(setup, 13).verdict()).isEqualTo(DecodingVerdict.DECODED);
        Decoding swapped = Decoding.of(setup.withSwapped(true), 13);
        assertThat(swapped.verdict()).isEqualTo(DecodingVerdict.SWAPPED);
        assertThat(swapped.countedPerTurn()).isEqualTo(35);
    }

    @Test
    void aSignalThatNoLevelOfThisRigLiftsOverTheThresholdEndsBySwing() {
        Setup setup = Bench.setup(Bench.pattern(Bench.tone(Tone.Shape.SINE, 0.5, 8.1), 10, 20, 40), Bench.rig(0),
                Bench.hysteresis(9.5, Edge.RISING));
        assertThat(setup.mostPinVolts()).isCloseTo(9, within(0.01)); // 10 V, 1 kohm, 9 kohm
        Preflight found = Preflight.of(setup, chosenHz(setup), part -> {});
        assertThat(found.low()).isEmpty();
        assertThat(found.reason()).contains(Limit.SWING);
        assertThat(found.chosen().worst().marginVolts()).isCloseTo(8.1 - 9.5, within(8.1 * 2e-4 * 2));
        assertThat(found.summary()).startsWith("does not decode at any speed on this input: never switches; 1.4 V short");
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void anOutputThatIsKnownToTurnTheSignalUpsideDownGivesTheSame(boolean corrected) {
        Setup setup = Bench.setup(Bench.coil(12, 1, 0.3, 2, 2), Bench.rig(20), Bench.hysteresis(0.3, Edge.FALLING))
                .withCorrection(corrected);
        AudioOutput out = setup.rig().output();
        Rig upsideDown = new Rig(new AudioOutput(out.fullScaleVolts(), out.outputOhms(), out.couplingFarads(), true, 0),
                setup.rig().divider(), setup.rig().lead());
        Decoding plain = Decoding.of(setup, 10);
        Decoding turned = Decoding.of(setup.withRig(upsideDown), 10);
        assertThat(plain.isDecoded()).isTrue();
        assertThat(turned).usingRecursiveComparison().withComparatorForType(
                (a, b) -> Math.abs(a - b) < 1e-9 ? 0 : Double.compare(a, b), Double.class).isEqualTo(plain);
    }

    @Test
    void whatAFilterDelaysIsLateAndNotSwapped() {
        // 15 kohm and 47 nF delay teeth of 1 kHz by atan(1000/226) of a turn of the phase, 0.21 of a pitch; the threshold adds
        Setup setup = Bench.setup(Bench.coil(36, 1, 0.2, 8, 8), Bench.rig(0), Bench.input(
                new Arming.Hysteresis(-0.5, 0.5), Edge.FALLING, 15e3, Optional.of(Spread.exactly(47e-9))));
        Decoding judged = Decoding.of(setup, 1000 / 36.0);
        assertThat(judged.verdict()).isEqualTo(DecodingVerdict.DECODED);
        assertThat(judged.meanLateDeg()).isGreaterThan(0.25 * 10);
        assertThat(Decoding.of(setup.withSwapped(true), 1000 / 36.0).verdict()).isEqualTo(DecodingVerdict.SWAPPED);
    }

    @Test
    void aPlainRingDecodesEitherWayRound() {
        Setup setup = Bench.setup(Bench.pattern(Bench.coil(17, 0, 0.3, 2, 2), 10, 20, 40), Bench.rig(0), Bench.zeroCrossing());
        assertThat(Preflight.rangeOnly(setup, chosenHz(setup)).high().orElseThrow().speedHz()).isEqualTo(40);
        assertThat(Preflight.rangeOnly(setup.withSwapped(true), chosenHz(setup)).high().orElseThrow().speedHz()).isEqualTo(40);
    }

    @Test
    void whatStandsStillIsNotJudged() {
        Pattern still = Bench.pattern(Bench.hall(12, 1, 1), 1, 10, 20);
        Setup setup = Bench.setup(still.withOutputs(List.of(new Output("signal", 0, 0, still.outputs().get(0).signal()))),
                Bench.rig(0), Bench.zeroCrossing());
        assertThatThrownBy(() -> Preflight.rangeOnly(setup, chosenHz(setup))).isInstanceOf(Refused.class)
                .hasMessage("output signal stands still; choose an output that turns");
    }
}
