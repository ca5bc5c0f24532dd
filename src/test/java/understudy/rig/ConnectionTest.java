package understudy.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * One connection against formulas written by hand. Where no tolerance is explained, both sides are exact and only
 * rounding is allowed for; 1e12 ohm and ten million seconds stand for "open" and "long after" in the model, which costs
 * at most 1e-6 of a volt.
 */
class ConnectionTest {
    private static final double ROUNDING = 1e-9;
    private static final double AGE = 1e-6;
    /** Both wires of the lead, 0.1 ohm each. */
    private static final double WIRES_OHMS = 0.2;

    private static AudioOutput output(double ohms, Optional<Double> farads) {
        return new AudioOutput(Spread.exactly(1.4), Spread.exactly(ohms), farads.map(Spread::exactly), false,
                AudioOutput.USUAL_POP_VOLTS);
    }

    private static Rig rig(AudioOutput output, double seriesOhms, Optional<Double> shuntOhms, Coupling coupling) {
        return new Rig(output, new Divider(Spread.exactly(seriesOhms), shuntOhms.map(Spread::exactly), coupling),
                new Lead(Spread.exactly(0.1), 1e-12)); // so little that it is gone at once
    }

    private static Input resistive(double ohms, FrontEnd frontEnd) {
        return new ResistiveInput(Spread.exactly(ohms), 0.1, frontEnd);
    }

    @Test
    void pulledUpPinRestsWhereItsResistorsPutIt() {
        Input input = new PulledUpInput(Spread.exactly(5), Spread.exactly(1000), 2, 3.8, FrontEnd.BARE);
        Rig rig = rig(output(100, Optional.of(100e-6)), 1000, Optional.of(1380.0),
                new Coupling.Capacitor(Spread.exactly(10e-6)));
        Connection connection = new Connection(rig, input);
        double expected = 5 * 1380.2 / 2380.2;
        assertThat(connection.restVolts(Probe.PINS)).isCloseTo(expected, within(AGE));
        assertThat(connection.biasShiftVolts(Probe.PINS)).isCloseTo(expected - 5, within(AGE));
    }

    @Test
    void levelsFollowTheDuty() {
        Input input = new PulledUpInput(Spread.exactly(5), Spread.exactly(1000), 2, 3.8, FrontEnd.BARE);
        Rig rig = rig(output(100, Optional.of(100e-6)), 1000, Optional.of(1380.0), new Coupling.Direct());
        ClosedForm form = new ClosedForm(1.4, 100, 1000, 1380, WIRES_OHMS, 1000, 5);
        Levels levels = new Connection(rig, input).levels(new Use(0.5, 0.1, 0.3));
        double swing = 2 * 0.7 * form.gain();
        // a pulse high for a part d of the time sits at (1-d) of its swing above and d below the resting voltage
        assertThat(levels.pinHighVolts()).isCloseTo(form.restPinVolts() + (1 - 0.3) * swing, within(AGE));
        assertThat(levels.pinLowVolts()).isCloseTo(form.restPinVolts() - 0.1 * swing, within(AGE));
        assertThat(levels.pinRestVolts()).isCloseTo(form.restPinVolts(), within(AGE));
        assertThat(levels.marginVolts(input)).isCloseTo(
                Math.min(2 - levels.lowVolts(), levels.highVolts() - 3.8), within(ROUNDING));
    }

    @Test
    void cornersAreThoseOfTheResistorsAroundEachStore() {
        double around = 50 + 2000 + WIRES_OHMS + 10_000;
        Connection capacitor = new Connection(
                rig(output(50, Optional.of(4.7e-6)), 2000, Optional.empty(), new Coupling.Direct()),
                resistive(10_000, FrontEnd.BARE));
        double corner = 1 / (2 * Math.PI * 4.7e-6 * around);
        // solved to rounding; 1e-12 F of lead against 4.7e-6 F of coupling
        assertThat(capacitor.lowCornerHz(Probe.PINS, 1000).orElseThrow() / corner).isCloseTo(1, within(1e-5));
        Connection.Gain gain = capacitor.gain(Probe.PINS, corner);
        assertThat(gain.volts()).isCloseTo(1.4 * 10_000 / around / Math.sqrt(2), within(1e-6));
        assertThat(gain.phaseRad()).isCloseTo(Math.PI / 4, within(1e-6)); // a high-pass leads at its corner
        assertThat(capacitor.scale(1000, true).fullScaleVolts()).isCloseTo(1.4 * 10_000 / around, within(1e-5));

        Connection direct = new Connection(rig(output(50, Optional.empty()), 2000, Optional.empty(), new Coupling.Direct()),
                resistive(10_000, FrontEnd.BARE));
        assertThat(direct.lowCornerHz(Probe.PINS, 1000)).isEmpty();

        Coupling.Transformer turns = new Coupling.Transformer(Spread.exactly(2), Spread.exactly(3), Spread.exactly(120),
                Spread.exactly(400), 0.01);
        Connection transformer = new Connection(rig(output(50, Optional.empty()), 2000, Optional.empty(), turns),
                resistive(10_000, FrontEnd.BARE));
        double before = 50 + 2000 + 120;
        double behind = (400 + WIRES_OHMS + 10_000) / 4; // seen from the primary
        double parallel = before * behind / (before + behind);
        assertThat(transformer.lowCornerHz(Probe.PINS, 1e5).orElseThrow() / (parallel / (2 * Math.PI * 3)))
                .isCloseTo(1, within(1e-5)); // at 100 kHz the inductance still takes (62 Hz/100 kHz)^2 of the gain
        // the core sees what the divider before it leaves
        assertThat(transformer.leastHz(Use.FULL).orElseThrow())
                .isCloseTo(1.4 * behind / (before + behind) / (2 * Math.PI * 0.01), within(1e-6));
        assertThat(direct.leastHz(Use.FULL)).isEmpty();
    }

    @Test
    void squareWaveTiltsByTheCornerOverItsFrequency() {
        Rig rig = rig(output(50, Optional.of(4.7e-6)), 2000, Optional.empty(), new Coupling.Direct());
        double corner = 1 / (2 * Math.PI * 4.7e-6 * (12_050 + WIRES_OHMS));
        for (double hz : new double[] {3, 10, 100}) {
            int steps = 7;
            Transient time = new Connection(rig, resistive(10_000, FrontEnd.BARE)).fromRest(0.5 / hz / steps);
            time.jumpTo(1);
            double top = 1.4 * 10_000 / (12_050 + WIRES_OHMS); // before the lead's 1e-12 F charge, nothing has moved
            for (int i = 0; i < steps; i++) {
                time.stepTo(1);
            }
            double tilt = 1 - time.volts(Probe.PINS) / top;
            assertThat(tilt).isCloseTo(1 - Math.exp(-Math.PI * corner / hz), within(1e-6));
        }
    }

    @Test
    void rampThroughAHighPassSettlesAtItsSlopeTimesItsTimeConstant() {
        Rig rig = rig(output(50, Optional.of(1e-6)), 950, Optional.empty(), new Coupling.Direct());
        double ohms = 1000 + WIRES_OHMS + 1000;
        double tau = 1e-6 * ohms;
        Transient time = new Connection(rig, resistive(1000, FrontEnd.BARE)).fromRest(1e-3);
        for (int i = 1; i <= 6; i++) {
            time.stepTo(0.1 * i);
            double slope = 0.1 * 1.4 / 1e-3 * 1000 / ohms;
            assertThat(time.volts(Probe.PINS)).isCloseTo(slope * tau * (1 - Math.exp(-i * 1e-3 / tau)), within(1e-6));
        }
    }

    @Test
    void firstTouchOfADischargedCapacitorPullsThePinDownAndLetsGo() {
        Input input = new PulledUpInput(Spread.exactly(5), Spread.exactly(2000), 2, 3.8, FrontEnd.BARE);
        Rig rig = rig(output(100, Optional.of(10e-6)), 900, Optional.empty(), new Coupling.Direct());
        Transient time = new Connection(rig, input).fromFirstTouch(1e-3);
        double source = 1000 + WIRES_OHMS;
        double tau = 10e-6 * (source + 2000);
        for (int i = 1; i <= 20; i++) {
            time.stepTo(0);
            double amps = 5 / (source + 2000) * Math.exp(-i * 1e-3 / tau);
            assertThat(time.volts(Probe.PINS)).isCloseTo(5 - 2000 * amps, within(1e-6));
        }
    }

    @Test
    void clampBeginsToConductAtItsOwnInstantWhateverTheStep() {
        FrontEnd frontEnd = new FrontEnd(Spread.exactly(10_000), Optional.of(Spread.exactly(100e-9)),
                Optional.of(new FrontEnd.Clamp(-0.6, 0.6, 200)));
        Rig rig = rig(output(1, Optional.empty()), 999, Optional.empty(), new Coupling.Direct());
        // Thevenin before the comparator's side: 1.4 V through 1000.2 ohm, loaded by 5000 ohm, then 10 kohm
        double open = 1.4 * 5000 / 6000.2;
        double ohms = 1000.2 * 5000 / 6000.2 + 10_000;
        double tau = ohms * 100e-9;
        double begins = -tau * Math.log(1 - 0.6 / open);
        double end = 3.7e-3;
        double settled = (open / ohms + 0.6 / 200) / (1 / ohms + 1.0 / 200);
        double clampedTau = 100e-9 / (1 / ohms + 1.0 / 200);
        double expected = settled + (0.6 - settled) * Math.exp(-(end - begins) / clampedTau);
        for (int steps : new int[] {1, 2, 5, 100}) {
            Transient time = new Connection(rig, resistive(5000, frontEnd)).fromRest(end / steps);
            time.jumpTo(1);
            for (int i = 0; i < steps; i++) {
                time.stepTo(1);
            }
            assertThat(time.volts(Probe.COMPARATOR)).as(steps + " steps").isCloseTo(expected, within(1e-7));
        }
        assertThat(begins).isBetween(0.2e-3, end); // else the test would not show what it says
    }

    @Test
    void invertedOutputTurnsTheSignalOver() {
        AudioOutput inverted = new AudioOutput(Spread.exactly(1.4), Spread.exactly(100), Optional.empty(), true, 0);
        Rig rig = rig(inverted, 1000, Optional.empty(), new Coupling.Direct());
        Connection connection = new Connection(rig, resistive(10_000, FrontEnd.BARE));
        assertThat(Math.abs(connection.gain(Probe.PINS, 100).phaseRad())).isCloseTo(Math.PI, within(1e-5));
        Transient time = connection.fromRest(1e-3);
        time.stepTo(1);
        assertThat(time.volts(Probe.PINS)).isCloseTo(-1.4 * 10_000 / 11_100.2,
                within(2e-6)); // the lead's 1e-12 F lags a slope of 1.4 V/ms by 1 ns;
        assertThat(connection.levels(Use.FULL).highVolts()).isCloseTo(1.4 * 10_000 / 11_100.2, within(1e-6));
    }

    @Test
    void whatTheClipsShowIsTheSourceAndTheDirectPath() {
        Input input = resistive(1e4, FrontEnd.BARE);
        Rig rig = rig(output(100, Optional.of(10e-6)), 3900, Optional.of(1500.0), new Coupling.Direct());
        assertThat(Assessment.directOhms(rig, input)).isCloseTo(1500 + WIRES_OHMS, within(0.01));
        assertThat(Assessment.sourceOhms(rig, input)).isCloseTo(1500.0 * 4000 / 5500 + WIRES_OHMS, within(0.01));
        Rig open = rig(output(100, Optional.of(10e-6)), 3900, Optional.empty(), new Coupling.Direct());
        assertThat(Assessment.directOhms(open, input)).isInfinite();
        Input pair = InputKind.RELUCTOR_BIASED_PAIR.usual(); // a series resistor in either leg
        assertThat(Assessment.sourceOhms(rig, pair)).isCloseTo(1500.0 * 7900 / 9400 + WIRES_OHMS, within(0.01));
    }
}
