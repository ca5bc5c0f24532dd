package understudy.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import understudy.refusal.Refused;

/** The search against every pair of values, judged by formulas written by hand. */
class DividerSearchTest {
    /** A strong line output, 3 V rms. */
    private static final AudioOutput STRONG = new AudioOutput(new Spread(4.24, 0.02), new Spread(220, 0.1),
            Optional.of(new Spread(10e-6, 0.2)), false, AudioOutput.USUAL_POP_VOLTS);
    private static final AudioOutput USUAL = new AudioOutput(new Spread(1.414, 0.02), new Spread(100, 0.1),
            Optional.of(new Spread(100e-6, 0.2)), false, AudioOutput.USUAL_POP_VOLTS);
    private static final double PARTS = 0.01;

    private static PulledUpInput pulledUp(double ohms) {
        return new PulledUpInput(new Spread(5, 0.05), new Spread(ohms, 0.05), 2.0, 3.8, FrontEnd.BARE);
    }

    private static ReluctorInput reluctor(double inputOhms, double mostSensorOhms) {
        return new ReluctorInput(false, new Spread(inputOhms, 0.1), Spread.exactly(0), Spread.exactly(1e9), 0,
                FrontEnd.BARE, new Arming.Hysteresis(-0.16, 0.16), ReluctorInput.Edge.FALLING, mostSensorOhms);
    }

    private static DividerSearch.Request request(AudioOutput output, Input input, Preferred series) {
        return new DividerSearch.Request(output, Lead.USUAL, input, Use.FULL, series, PARTS, 2, CurrentLimits.STANDARD,
                Optional.empty());
    }

    private record Best(double seriesOhms, double shuntOhms, double marginVolts, int feasible) {}

    /** Every pair of the series, every corner of the tolerances. */
    private static Best bruteForce(DividerSearch.Request request, double volts, double voltsTolerance, Spread ohms,
            double mostDirectOhms, double excursion, ToDoubleFunction<ClosedForm> margin) {
        Best best = new Best(0, 0, 0, 0);
        int feasible = 0;
        for (double series : request.series().between(1e3, 1e6)) {
            for (double shunt : request.series().between(100, 1e6)) {
                double least = Double.POSITIVE_INFINITY;
                if (shunt + 0.2 < 500 || shunt + 0.2 > mostDirectOhms) {
                    continue;
                }
                for (int ends = 0; ends < 64 && least > 0; ends++) {
                    ClosedForm form = new ClosedForm(end(request.output().fullScaleVolts(), ends),
                            end(request.output().outputOhms(), ends >> 1), end(new Spread(series, PARTS), ends >> 2),
                            end(new Spread(shunt, PARTS), ends >> 3), 0.2, end(ohms, ends >> 4),
                            end(new Spread(volts, voltsTolerance), ends >> 5));
                    boolean keeps = excursion * form.rigAmps() <= 1e-3 && form.faultAmps(2.5) <= 5e-3;
                    least = Math.min(least, keeps ? margin.applyAsDouble(form) : -1);
                }
                if (least > 0) {
                    feasible++;
                }
                if (least > best.marginVolts) {
                    best = new Best(series, shunt, least, 0);
                }
            }
        }
        return new Best(best.seriesOhms, best.shuntOhms, best.marginVolts, feasible);
    }

    private static double end(Spread spread, int bit) {
        return spread.nominal() * (1 + ((bit & 1) == 1 ? 1 : -1) * spread.tolerance());
    }

    private static void agrees(DividerSearch.Design design, Best best) {
        Divider divider = design.assessment().rig().divider();
        assertThat(best.feasible).as("the case must leave a choice").isGreaterThan(3);
        assertThat(divider.seriesOhms().nominal()).isEqualTo(best.seriesOhms);
        assertThat(divider.shuntOhms().orElseThrow().nominal()).isEqualTo(best.shuntOhms);
        // the same formula in another order: rounding, and the front end's 1e9 ohm beside 1e4: 1e-5 of a volt
        assertThat(design.assessment().marginVolts()).isCloseTo(best.marginVolts,
                org.assertj.core.data.Offset.offset(1e-4));
    }

    @Test
    void pulledUpInputGetsTheTrueOptimum() {
        for (double ohms : new double[] {10e3, 15e3}) {
            for (Preferred series : new Preferred[] {Preferred.E12, Preferred.E24}) {
                DividerSearch.Request request = request(STRONG, pulledUp(ohms), series);
                Best best = bruteForce(request, 5, 0.05, new Spread(ohms, 0.05), 1e9, 1, form -> Math.min(
                        2.0 - (form.restPinVolts() - form.fullScaleVolts() * form.gain()),
                        form.restPinVolts() + form.fullScaleVolts() * form.gain() - 3.8));
                DividerSearch.Design design = DividerSearch.best(request);
                agrees(design, best);
            }
        }
    }

    @Test
    void dutyShiftsTheOptimum() {
        DividerSearch.Request even = request(STRONG, pulledUp(15e3), Preferred.E24);
        DividerSearch.Request request = new DividerSearch.Request(STRONG, Lead.USUAL, pulledUp(15e3),
                new Use(1, 0.4, 0.4), Preferred.E24, PARTS, 2, CurrentLimits.STANDARD, Optional.empty());
        // high for 0.4 of the time: 1.2 of the peak above the resting voltage, 0.8 below
        Best best = bruteForce(request, 5, 0.05, new Spread(15e3, 0.05), 1e9, 1.2, form -> Math.min(
                2.0 - (form.restPinVolts() - 0.8 * form.fullScaleVolts() * form.gain()),
                form.restPinVolts() + 1.2 * form.fullScaleVolts() * form.gain() - 3.8));
        DividerSearch.Design design = DividerSearch.best(request);
        agrees(design, best);
        assertThat(design.assessment().rig().divider()).isNotEqualTo(DividerSearch.best(even).assessment().rig().divider());
    }

    private static Stream<Coupling> couplings() {
        return Stream.concat(Stream.of(new Coupling.Capacitor(Spread.exactly(1e-6))), DoubleStream.of(0.3, 1, 2).mapToObj(
                ratio -> new Coupling.Transformer(Spread.exactly(ratio), Spread.exactly(2), Spread.exactly(90),
                        Spread.exactly(95 * ratio * ratio), 0.005)));
    }

    /** The circuit itself is held to a simulator elsewhere; here the search's short cuts are held to trying all. */
    @ParameterizedTest
    @MethodSource("couplings")
    void pairOfPinsGetsTheTrueOptimum(Coupling coupling) {
        AudioOutput output = new AudioOutput(new Spread(1.414, 0.02), Spread.exactly(100),
                Optional.of(Spread.exactly(100e-6)), false, AudioOutput.USUAL_POP_VOLTS);
        Input input = new ReluctorInput(true, new Spread(20e3, 0.2), Spread.exactly(2.5), Spread.exactly(100e3), 0,
                FrontEnd.BARE, new Arming.Adaptive(0.35, 0.03, 0.085), ReluctorInput.Edge.FALLING, 12e3);
        DividerSearch.Request request = new DividerSearch.Request(output, Lead.USUAL, input, Use.FULL, Preferred.E12, PARTS, 2,
                CurrentLimits.STANDARD, Optional.of(coupling));
        // a winding of less than a coil's 500 ohm would count as no coil: then all are tried without regard to that
        boolean coil = coupling instanceof Coupling.Capacitor;
        double best = 0;
        Divider bestDivider = null;
        List<Optional<Spread>> shunts = new ArrayList<>();
        Preferred.E12.between(coil ? 500 : 100, coil ? 11.9e3 : 1e6)
                .forEach(ohms -> shunts.add(Optional.of(new Spread(ohms, PARTS))));
        if (!coil) {
            shunts.add(Optional.empty());
        }
        for (double series : Preferred.E12.between(1e3, 1e6)) {
            for (Optional<Spread> shunt : shunts) {
                Divider divider = new Divider(new Spread(series, PARTS), shunt, coupling);
                Rig rig = new Rig(output, divider, Lead.USUAL);
                double margin = Double.POSITIVE_INFINITY;
                for (WorstCase.Build build : WorstCase.corners(rig, input)) {
                    margin = Math.min(margin, new Connection(build.rig(), build.input()).levels(Use.FULL)
                            .marginVolts(build.input()));
                    if (margin <= best || !new StateStudy(build.rig(), build.input(), Use.FULL).keeps(CurrentLimits.STANDARD)) {
                        margin = -1;
                        break;
                    }
                }
                if (margin > best) {
                    best = margin;
                    bestDivider = divider;
                }
            }
        }
        DividerSearch.Design design = DividerSearch.best(request);
        assertThat(best).isGreaterThan(0.1);
        assertThat(design.assessment().rig().divider()).isEqualTo(bestDivider);
        assertThat(design.assessment().marginVolts()).isEqualTo(best);
    }

    @Test
    void whereNoCoilLikePathKeepsTheLimitsTheNextBestIsTakenAndSaid() {
        DividerSearch.Design design = DividerSearch.best(request(USUAL, reluctor(20e3, 2000), Preferred.E24));
        // 24 V across 2 kohm would be 12 mA
        assertThat(design.assessment().directOhms()).isBetween(24 / 5e-3, 12e3);
        assertThat(design.cautions()).singleElement().asString()
                .startsWith("The input may report an open circuit: it expects a sensor of at most 2 kohm across the clips, "
                        + "this rig shows 11 kohm.");
    }

    @Test
    void capacitorPutsTheCornerWhereItWasAskedFor() {
        Rig rig = DividerSearch.best(request(STRONG, pulledUp(15e3), Preferred.E24)).assessment().rig();
        Coupling.Capacitor capacitor = (Coupling.Capacitor) rig.divider().coupling();
        // around it: source, series, and shunt beside wires and pull-up; in series with the output's own 10 uF
        double shunt = rig.divider().shuntOhms().orElseThrow().nominal();
        double around = 220 + rig.divider().seriesOhms().nominal() + shunt * 15_000.2 / (shunt + 15_000.2);
        double farads = 1 / (1 / capacitor.farads().nominal() + 1 / 10e-6);
        assertThat(1 / (2 * Math.PI * around * farads)).isLessThan(2 * (1 + 1e-5)); // 1 kHz stands for the top
        double smaller = Preferred.E12.between(1e-9, capacitor.farads().nominal() * 0.9).stream()
                .reduce((first, second) -> second).orElseThrow();
        assertThat(1 / (2 * Math.PI * around * (1 / (1 / smaller + 1 / 10e-6)))).isGreaterThan(2);
    }

    @Test
    void whenThereIsNoneTheReasonAndWhatWouldDoAreSaid() {
        assertThatThrownBy(() -> DividerSearch.best(request(USUAL, pulledUp(15e3), Preferred.E24)))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("no series and shunt resistor of E24 make this input switch from this output of "
                        + "1.41 V peak within the limits; the best without regard to them, series 1 kohm, shunt ")
                .hasMessageContaining("but breaks them: pin shorted to 24 V gives ")
                .hasMessageContaining("an output of ");
        assertThatThrownBy(() -> DividerSearch.best(request(USUAL, pulledUp(470), Preferred.E24)))
                .hasMessageContaining("even without regard to currents its swing is too small")
                .hasMessageContaining("not even the strongest audio output, 4.24 V peak, would do");
        Input twelve = new PulledUpInput(new Spread(12, 0.05), new Spread(2200, 0.05), 3, 7, FrontEnd.BARE);
        assertThatThrownBy(() -> DividerSearch.best(request(STRONG, twelve, Preferred.E24)))
                .hasMessage("no passive rig can stand in for an input pulled up to 8 V or more (this one: 12 V): an audio "
                        + "output's few volts can't pull it across its thresholds; test this circuit by other means");
    }

    @Test
    void reluctorInputGetsTheTrueOptimumAmongDirectPathsItAccepts() {
        for (double mostSensorOhms : new double[] {9e3, 12e3}) {
            DividerSearch.Request request = request(USUAL, reluctor(20e3, mostSensorOhms), Preferred.E24);
            Best best = bruteForce(request, 0, 0, new Spread(20e3, 0.1), mostSensorOhms, 1,
                    form -> form.fullScaleVolts() * form.gain() - 0.16);
            DividerSearch.Design design = DividerSearch.best(request);
            agrees(design, best);
            assertThat(design.cautions()).isEmpty();
        }
    }
}
