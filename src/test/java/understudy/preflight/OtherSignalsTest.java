package understudy.preflight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.pattern.Bursts;
import understudy.pattern.DrawnCycle;
import understudy.pattern.DrawnCycle.Point;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.rig.FrontEnd;
import understudy.rig.Input;
import understudy.rig.PulledUpInput;
import understudy.rig.ReluctorInput.Edge;
import understudy.rig.ResistiveInput;
import understudy.rig.Spread;
import understudy.wave.MeanVolts;

/** Drawn cycles and bursts, on inputs that are meant for them and others. */
class OtherSignalsTest {

    private static final double THRESHOLD = 0.2;
    private static final double PEAK = 1;
    private static final double RING_HZ = 2000;
    private static final double DECAY_SECONDS = 1.5e-3;

    private static Input listening(double clampVolts) {
        return new ResistiveInput(Spread.exactly(9e3), THRESHOLD, new FrontEnd(Spread.exactly(1), Optional.empty(),
                clampVolts == 0 ? Optional.empty() : Optional.of(new FrontEnd.Clamp(-clampVolts, clampVolts, 10))));
    }

    /** Two bursts a turn. */
    private static Bursts ringing(double noiseVolts) {
        return new Bursts(RING_HZ, DECAY_SECONDS, PEAK, 360, List.of(10.0, 200.0), noiseVolts);
    }

    /** Of exp(-t/decay) sin(2 pi f t), the extreme number {@code half}, from 0; those with odd numbers are below zero. */
    private static double extreme(int half) {
        double w = 2 * Math.PI * RING_HZ;
        double first = Math.atan(w * DECAY_SECONDS);
        return PEAK * Math.exp(-(first + Math.PI * half) / w / DECAY_SECONDS) * Math.sin(first);
    }

    @ParameterizedTest
    @ValueSource(doubles = {5, 20, 40})
    void aBurstIsHeardWithAsManySwingsAsItsDecaySays(double hz) {
        int swings = 0;
        while (extreme(2 * swings) > THRESHOLD) {
            swings++;
        }
        assertThat(extreme(2 * swings - 2) / THRESHOLD).as("no swing is on the edge").isGreaterThan(1.02);
        Decoding judged = Decoding.of(Bench.setup(ringing(0), Bench.rig(0), listening(0)), hz);
        assertThat(judged.verdict()).isEqualTo(DecodingVerdict.DECODED);
        assertThat(judged.countedPerTurn()).isEqualTo(2);
        assertThat(judged.oscillations()).isEqualTo(swings);
        // the first swing below zero is less than the one above. Steps are 1/16 of a frame, at 5 Hz 1/8: 192 a period, whose
        // top lies between two of them at cos(pi/192). The smoothed corner has 3e-4 left 18 frames on.
        assertThat(judged.marginVolts()).isCloseTo(extreme(1) - THRESHOLD, within(PEAK * (1.4e-4 + 3e-4)));
        // it is heard where it first reaches the threshold, at 0.2 = exp(-t/1.5 ms) sin(2 pi 2 kHz t): 16.2 us, and the
        // corner at its start is smoothed over 1.5 frames: half of that at most
        assertThat(judged.meanLateDeg()).isCloseTo(360 * hz * 16.2e-6, within(360 * hz * 16e-6));
    }

    @Test
    void theNoiseUnderTheRingingIsLeftAside() {
        Decoding quiet = Decoding.of(Bench.setup(ringing(0), Bench.rig(0), listening(0)), 10);
        assertThat(Decoding.of(Bench.setup(ringing(0.3), Bench.rig(0), listening(0)), 10)).isEqualTo(quiet);
    }

    @Test
    void burstsThatRunIntoEachOtherAreNotToldApart() {
        Setup setup = Bench.setup(Bench.pattern(ringing(0), 5, 10, 1000), Bench.rig(0), listening(0));
        Preflight found = Preflight.of(setup, 10, part -> {});
        assertThat(found.high().orElseThrow().limit()).contains(Limit.OVERLAP);
        assertThat(found.high().orElseThrow().widenings().get(0).remedy().text(Wording.NEUTRAL)).startsWith("half the volts: ");
        // 170 degrees on, a burst must have fallen to the threshold, less its last period
        double fallen = DECAY_SECONDS * Math.log(extreme(0) / THRESHOLD);
        assertThat(found.high().orElseThrow().speedHz() * (fallen + 1 / RING_HZ) / (170 / 360.0)).isBetween(0.8, 1.3);
        assertThat(found.low().orElseThrow().speedHz()).isEqualTo(5);
    }

    @Test
    void burstsThatAreTooFaintOrTooLoudAreToldApart() {
        Setup setup = Bench.setup(ringing(0), Bench.rig(0), listening(0));
        double least = THRESHOLD / extreme(1);
        assertThat(Decoding.of(setup.withLevel(1.01 * least), 10).marginVolts()).isPositive();
        assertThat(Decoding.of(setup.withLevel(0.99 * least), 10).marginVolts()).isNegative();
        assertThat(Decoding.of(setup.withLevel(0.9 * THRESHOLD / extreme(0)), 10).verdict()).isEqualTo(DecodingVerdict.SILENT);
        Setup clamped = Bench.setup(Bench.pattern(ringing(0), 5, 10, 20), Bench.rig(0), listening(0.7));
        Preflight found = Preflight.of(clamped, 10, part -> {});
        assertThat(found.chosen().worst().verdict()).isEqualTo(DecodingVerdict.CUT);
        assertThat(found.reason()).contains(Limit.CLAMP);
        assertThat(found.remedies()).contains(Remedy.of("half the volts: 500 mV at most between the pins"));
        assertThat(Decoding.of(clamped.withLevel(0.5), 10).isDecoded()).isTrue();
    }

    @Test
    void ringingOnAnInputThatCountsTeethIsRefused() {
        Setup reluctor = Bench.setup(ringing(0), Bench.rig(0), Bench.zeroCrossing());
        assertThatThrownBy(() -> Preflight.rangeOnly(reluctor, 10)).isInstanceOf(Refused.class)
                .hasMessageStartingWith("output signal rings like a knock sensor, and this input is made for a reluctor: it would"
                        + " take every swing for a tooth; a knock input is a plain resistance: ");
        Input pulledUp = new PulledUpInput(Spread.exactly(5), Spread.exactly(1000), 2.0, 3.8, FrontEnd.BARE);
        assertThatThrownBy(() -> Preflight.rangeOnly(Bench.setup(ringing(0), Bench.rig(0), pulledUp), 10))
                .hasMessageContaining("made for a Hall sensor or a switch");
    }

    /** Two humps a turn: up from -1 V to 1 V over 60 deg, and a smaller one. */
    private static DrawnCycle humps(double smallVolts) {
        return new DrawnCycle(360, List.of(new Point(0, -1), new Point(60, 1), new Point(120, -1), new Point(200, -1),
                new Point(230, smallVolts), new Point(260, -1)));
    }

    private static double meanOfHumps(double smallVolts) {
        return (-1 * 360 + 2 * 120 / 2.0 + (smallVolts + 1) * 60 / 2.0) / 360; // triangles on a floor of -1 V
    }

    @ParameterizedTest
    @ValueSource(doubles = {2, 30})
    void aDrawnCurveIsLateByItsThresholdOverItsSlope(double hz) {
        // without a capacitor nothing is taken away, so it is drawn around its mean
        double mean = meanOfHumps(1);
        DrawnCycle drawn = new DrawnCycle(360, humps(1).points().stream()
                .map(point -> new Point(point.angleDeg(), point.volts() - mean)).toList());
        Decoding judged = Decoding.of(Bench.setup(drawn, Bench.rig(0), Bench.hysteresis(THRESHOLD, Edge.RISING)), hz);
        assertThat(judged.verdict()).isEqualTo(DecodingVerdict.DECODED);
        assertThat(judged.countedPerTurn()).isEqualTo(2);
        // 2 V over 60 deg, and over 30: at 30 Hz a frame is 0.225 deg, a step far less; straight lines stay what they are
        assertThat(judged.timingErrorDeg()).isCloseTo(THRESHOLD / (2 / 60.0), within(0.01));
        // floor below the mean to the threshold; a corner, smoothed over frames, is far away
        assertThat(judged.marginVolts()).isCloseTo(Math.min(1 - mean, 1 + mean) - THRESHOLD, within(0.02));
    }

    @Test
    void aHumpBelowTheThresholdIsMissed() {
        double mean = meanOfHumps(-0.5);
        for (Edge edge : Edge.values()) {
            Setup setup = Bench.setup(humps(-0.5), Bench.rig(1), Bench.hysteresis(0.15, edge));
            assertThat(-0.5 - mean).isBetween(0.1, 0.149); // above the mean, yet below the threshold
            assertThat(Decoding.of(setup, 20).verdict()).isEqualTo(DecodingVerdict.MISCOUNTED);
            assertThat(Decoding.of(setup, 20).countedPerTurn()).isEqualTo(1);
            assertThat(Decoding.of(setup, 20).expectedPerTurn()).isEqualTo(2);
            assertThat(Decoding.of(setup.withLevel(3), 20).verdict()).isEqualTo(DecodingVerdict.DECODED);
        }
    }

    @Test
    void aCurveOfUnequalHumpsTellsWhenItsWiresAreSwapped() {
        Setup setup = Bench.setup(humps(1), Bench.rig(1), Bench.hysteresis(THRESHOLD, Edge.RISING));
        assertThat(Decoding.of(setup, 20).verdict()).isEqualTo(DecodingVerdict.DECODED);
        assertThat(Decoding.of(setup.withSwapped(true), 20).verdict()).isEqualTo(DecodingVerdict.SWAPPED);
    }

    @Test
    void aStepCountsOnceAndATouchDoesNot() {
        // up in a step at 90 deg; it touches its mean, which is 0, from above at 180 deg; down at 270 deg
        DrawnCycle drawn = new DrawnCycle(360, List.of(new Point(0, -1), new Point(90, -1), new Point(90, 1), new Point(135, 1),
                new Point(180, 0), new Point(225, 1), new Point(270, 1), new Point(270, -0.5), new Point(360, -0.5)));
        Setup setup = Bench.setup(drawn, Bench.rig(0), Bench.hysteresis(THRESHOLD, Edge.RISING));
        assertThat(MeanVolts.of(setup.output())).isZero();
        CycleEvents events = CycleEvents.of(setup);
        assertThat(events.timing()).hasSize(1);
        assertThat(events.timing()[0]).isCloseTo(0.25, within(1e-12));
        assertThat(events.opposite()[0]).isCloseTo(0.75, within(1e-12));
        DrawnCycle flat = new DrawnCycle(360, List.of(new Point(0, 1), new Point(90, 1)));
        assertThatThrownBy(() -> CycleEvents.of(Bench.setup(flat, Bench.rig(0), Bench.zeroCrossing())))
                .hasMessage("output signal is drawn flat; draw a curve that goes up and down");
    }
}
