package understudy.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import understudy.refusal.Refused;

/** Currents in every state against formulas written by hand, and what becomes of a build that breaks a limit. */
class StateStudyTest {

    private static Rig rig(double outputOhms, double seriesOhms, double shuntOhms) {
        return new Rig(new AudioOutput(Spread.exactly(1.4), Spread.exactly(outputOhms), Optional.of(Spread.exactly(10e-6)),
                false, AudioOutput.USUAL_POP_VOLTS),
                new Divider(Spread.exactly(seriesOhms), Optional.of(Spread.exactly(shuntOhms)), new Coupling.Direct()),
                Lead.USUAL);
    }

    private static Input pulledUp(double ohms) {
        return new PulledUpInput(Spread.exactly(5), Spread.exactly(ohms), 2, 3.8, FrontEnd.BARE);
    }

    @Test
    void worstOfAllFaultsAndTheRigsOwnShareAreTheClosedForms() {
        Random random = new Random(7);
        for (int i = 0; i < 50; i++) {
            double outputOhms = 1 + 500 * random.nextDouble();
            double series = 1000 * Math.pow(100, random.nextDouble());
            double shunt = 300 * Math.pow(100, random.nextDouble());
            double pullUp = 500 * Math.pow(20, random.nextDouble());
            ClosedForm form = new ClosedForm(1.4, outputOhms, series, shunt, 0.2, pullUp, 5);
            Map<State, StateReport> states = StateStudy.worst(rig(outputOhms, series, shunt), pulledUp(pullUp), Use.FULL);
            double most = states.values().stream().filter(report -> report.state().isFault())
                    .mapToDouble(StateReport::clipAmps).max().orElseThrow();
            // the pull-up's own current through the 0.01 ohm of the short is what the formula leaves out: 1e-5 of it
            assertThat(most / form.faultAmps(2.5)).isCloseTo(1, within(1e-4));
            StateReport normal = states.get(State.NORMAL);
            assertThat(normal.rigAmps() / form.rigAmps()).isCloseTo(1, within(1e-6));
            assertThat(normal.inputAmps() / (5 / (pullUp + 0.2 + shunt))).isCloseTo(1, within(1e-6));
        }
    }

    @Test
    void steadyFaultHeatsTheShuntByVoltsSquaredOverOhms() {
        Map<State, StateReport> states = StateStudy.worst(rig(100, 10e3, 1000), pulledUp(2200), Use.FULL);
        // 16 V across 1 kohm, less what the wires' 0.2 ohm takes
        assertThat(states.get(State.SHORT_TO_16_V).shuntWatts()).isCloseTo(0.256, within(0.256 * 5e-4));
    }

    @Test
    void groundShortIsWorseOnceTheCapacitorHoldsTheRestingVoltage() {
        Map<State, StateReport> states = StateStudy.worst(rig(100, 2900, 1380), pulledUp(1000), Use.FULL);
        double charged = 5 * 1380.0 / 2380;
        assertThat(states.get(State.SHORT_TO_GROUND).jackAmps()).isCloseTo((charged + 1.4) / 3000, within(1e-6));
    }

    @Test
    void buildThatBreaksALimitIsRefusedWithTheReasonAndTheNearestValues() {
        Assessment assessment = Assessment.of(rig(100, 1000, 1500), pulledUp(10e3), Use.FULL);
        assertThat(assessment.worstState(CurrentLimits.STANDARD)).isEqualTo(State.SHORT_TO_24_V);
        assertThatThrownBy(() -> assessment.requireWithin(CurrentLimits.STANDARD, Preferred.E24))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("pin shorted to 24 V gives 39.1 mA through a clip, the limit is 5 mA")
                .hasMessageContaining("the nearest values that keep the limits are series ");
        Divider nearest = DividerSearch.nearest(assessment, CurrentLimits.STANDARD, Preferred.E24).orElseThrow();
        double reach = distance(nearest.seriesOhms().nominal(), nearest.shuntOhms().orElseThrow().nominal());
        for (double series : Preferred.E24.between(1e3, 1e6)) {
            for (double shunt : Preferred.E24.between(100, 1e6)) {
                ClosedForm form = new ClosedForm(1.4, 100, series, shunt, 0.2, 10e3, 5);
                boolean keeps = form.rigAmps() <= 1e-3 && form.faultAmps(2.5) <= 5e-3;
                if (distance(series, shunt) < reach - 1e-9) {
                    assertThat(keeps).as(series + " and " + shunt + " are nearer").isFalse();
                }
            }
        }
        Assessment mended = Assessment.of(assessment.rig().withDivider(nearest), assessment.input(), Use.FULL);
        mended.requireWithin(CurrentLimits.STANDARD, Preferred.E24);
        assertThat(mended.breaches(CurrentLimits.STANDARD)).isEmpty();
    }

    private static double distance(double series, double shunt) {
        return Math.abs(Math.log(series / 1000)) + Math.abs(Math.log(shunt / 1500));
    }

    @Test
    void transformerAcrossAGroundedPinIsAShortForDirectCurrent() {
        Coupling.Transformer turns = new Coupling.Transformer(Spread.exactly(1), Spread.exactly(3), Spread.exactly(120),
                Spread.exactly(120), 0.01);
        Rig rig = new Rig(new AudioOutput(Spread.exactly(1.4), Spread.exactly(100), Optional.empty(), false, 2.5),
                new Divider(Spread.exactly(10e3), Optional.empty(), turns), Lead.USUAL);
        Map<State, StateReport> states = StateStudy.worst(rig, pulledUp(10e3), Use.FULL);
        // long after, only the secondary's winding is left; the signal adds 1.4 V over 10 kohm
        assertThat(states.get(State.SHORT_TO_24_V).clipAmps()).isBetween(24 / 120.3, 24 / 120.2 + 1.4 / 10e3);
    }

    @Test
    void limitsGoDownFreelyAndUpOnlyWithAReason() {
        assertThat(CurrentLimits.lowered(0.5e-3, 2e-3).override()).isEmpty();
        assertThatThrownBy(() -> CurrentLimits.lowered(2e-3, 5e-3)).isInstanceOf(Refused.class)
                .hasMessage("limits of 2 mA and 5 mA are higher than the standard 1 mA and 5 mA; lower them, or give the "
                        + "reason for the override, which is recorded with the rig");
        assertThatThrownBy(() -> new CurrentLimits(1e-3, 20e-3, Optional.of("  "))).isInstanceOf(Refused.class);
        assertThat(new CurrentLimits(1e-3, 20e-3, Optional.of("bench module, no battery near")).override())
                .contains("bench module, no battery near");
        assertThatThrownBy(() -> CurrentLimits.lowered(-1, 2e-3)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> CurrentLimits.lowered(Double.NaN, 2e-3)).isInstanceOf(Refused.class);
    }
}
