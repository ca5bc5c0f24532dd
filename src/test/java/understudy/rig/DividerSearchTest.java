package understudy.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

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
        return new DividerSearch.Request(output, Lead.USUAL, input, Use.FULL, series, PARTS, 2, Limits.STANDARD,
                Optional.empty());
    }

    private record Best(double seriesOhms, double shuntOhms, double marginVolts, int feasible) {}

    /** Every pair of the series, every corner of the tolerances. */
    private static Best bruteForce(DividerSearch.Request request, double volts, double voltsTolerance, Spread ohms,
            double mostDirectOhms, ToDoubleFunction<ClosedForm> margin) {
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
                    boolean keeps = form.rigAmps() <= 1e-3 && form.faultAmps(2.5) <= 5e-3;
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
                Best best = bruteForce(request, 5, 0.05, new Spread(ohms, 0.05), 1e9, form -> Math.min(
                        2.0 - (form.restPinVolts() - form.fullScaleVolts() * form.gain()),
                        form.restPinVolts() + form.fullScaleVolts() * form.gain() - 3.8));
                DividerSearch.Design design = DividerSearch.best(request);
                agrees(design, best);
            }
        }
    }

    @Test
    void reluctorInputGetsTheTrueOptimumAmongDirectPathsItAccepts() {
        for (double mostSensorOhms : new double[] {9e3, 12e3}) {
            DividerSearch.Request request = request(USUAL, reluctor(20e3, mostSensorOhms), Preferred.E24);
            Best best = bruteForce(request, 0, 0, new Spread(20e3, 0.1), mostSensorOhms,
                    form -> form.fullScaleVolts() * form.gain() - 0.16);
            DividerSearch.Design design = DividerSearch.best(request);
            agrees(design, best);
            assertThat(design.cautions()).isEmpty();
        }
    }
}
