package understudy.preflight;

import understudy.refusal.Remedy;
import understudy.refusal.Control;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import understudy.pattern.Bursts;
import understudy.pattern.DrawnCycle;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Reluctor;
import understudy.pattern.Tone;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;
import understudy.pattern.WheelSignal;
import understudy.rig.Input;
import understudy.rig.PulledUpInput;
import understudy.rig.ReluctorInput;
import understudy.rig.ResistiveInput;
import understudy.wave.MeanVolts;
import understudy.wave.OutputFacts;
import understudy.refusal.Refused;

/**
 * Where in one cycle of a healthy output the timing events are, and the transitions that go the other way: edges of teeth,
 * passages of a drawn curve through its mean, starts of bursts. A plain ring of equal teeth repeats with every tooth, so
 * its cycle is one pitch.
 *
 * @param timing        ascending, cycles
 * @param opposite      of each timing event the next transition that goes the other way, cycles
 * @param rising        the volts of the pattern rise at a timing event
 * @param plainRing     nothing in it tells one tooth from the next
 * @param cyclesPerTurn of the pattern's speed; NaN for a tone of fixed frequency
 * @param fixedHz       of such a tone, else NaN
 * @param lateTurns     turns of the speed by which the output comes later
 * @param narrowCycles  length of its finest detail, as the standard deviation of a Gaussian; 0 for edges
 */
record CycleEvents(
        double[] timing,
        double[] opposite,
        boolean rising,
        boolean plainRing,
        double cyclesPerTurn,
        double fixedHz,
        double lateTurns,
        double narrowCycles) {

    private static final double SAME_CYCLES = 1e-9;

    /** @throws Refused for a signal that stands still or is flat, and for ringing on an input that is made for teeth */
    static CycleEvents of(Setup setup) {
        Output output = setup.output();
        if (output.ratio() == 0 && !(output.signal() instanceof Tone)) {
            throw new Refused("output " + output.name() + " stands still", "choose an output that turns");
        }
        if (output.signal() instanceof WheelSignal wheelSignal) {
            return ofWheel(setup.pattern(), output, wheelSignal);
        } else if (output.signal() instanceof Tone tone) {
            return ofTone(output, tone);
        }
        return output.signal() instanceof DrawnCycle drawn
                ? ofDrawn(output, drawn, setup.input()) : ofBursts(output, (Bursts) output.signal(), setup.input());
    }

    double cycleHz(double speedHz) {
        return Double.isNaN(fixedHz) ? cyclesPerTurn * speedHz : fixedHz;
    }

    /** Degrees of the speed's turn that a cycle takes; of its own where it has a frequency of its own. */
    double cycleDeg() {
        return Double.isNaN(fixedHz) ? 360 / cyclesPerTurn : 360;
    }

    /** Timing events for one turn of the speed, or for one cycle of a fixed frequency. */
    double perTurn() {
        return Double.isNaN(fixedHz) ? timing.length * cyclesPerTurn : timing.length;
    }

    /** When event {@code index} of cycle {@code cycle} comes. */
    double seconds(long cycle, double place, double speedHz) {
        double late = Double.isNaN(fixedHz) ? lateTurns / speedHz : 0;
        return (cycle + place) / cycleHz(speedHz) + late;
    }

    private static CycleEvents ofWheel(Pattern pattern, Output output, WheelSignal signal) {
        Wheel wheel = signal.wheel();
        List<Tooth> teeth = wheel.teeth();
        int n = teeth.size();
        OutputFacts facts = OutputFacts.of(pattern).get(0);
        double[] timing = facts.timingEvents().stream().mapToDouble(event -> event.angleDeg() / wheel.overDeg()).toArray();
        double[] opposite = new double[n];
        boolean hall = signal.sensor() instanceof Hall;
        for (int k = 0; k < n; k++) {
            double next = k + 1 < n ? timing[k + 1] : timing[0] + 1;
            opposite[k] = hall ? teeth.get(k).trailingDeg() / wheel.overDeg() : 0.5 * (timing[k] + next);
        }
        boolean rising = signal.sensor() instanceof Hall levels
                ? levels.highVolts() > levels.lowVolts()
                : ((Reluctor) signal.sensor()).reversed();
        double narrow = signal.sensor() instanceof Reluctor coil
                ? coil.polePitches() * wheel.pitchDeg() / wheel.overDeg() : 0;
        double cyclesPerTurn = output.ratio() * 360 / wheel.overDeg();
        double lateTurns = output.phaseDeg() / 360;
        if (n > 1 && pattern.faults().isEmpty() && areAlike(teeth, timing)) {
            return new CycleEvents(new double[] {timing[0] * n}, new double[] {opposite[0] * n}, rising, true,
                    cyclesPerTurn * n, Double.NaN, lateTurns, narrow * n);
        }
        return new CycleEvents(timing, opposite, rising, areAlike(teeth, timing) && n > 1, cyclesPerTurn, Double.NaN,
                lateTurns, narrow);
    }

    private static boolean areAlike(List<Tooth> teeth, double[] timing) {
        int n = timing.length;
        for (int k = 0; k < n; k++) {
            double next = k + 1 < n ? timing[k + 1] : timing[0] + 1;
            if (Math.abs(next - timing[k] - 1.0 / n) > SAME_CYCLES
                    || Math.abs(teeth.get(k).widthDeg() - teeth.get(0).widthDeg()) > 360 * SAME_CYCLES) {
                return false;
            }
        }
        return true;
    }

    private static CycleEvents ofTone(Output output, Tone tone) {
        double cyclesPerTurn = tone.fixedFrequency() ? Double.NaN : output.ratio() * tone.cyclesPerTurn();
        double up = tone.shape() == Tone.Shape.TRIANGLE ? tone.part() / 2 : 0;
        double down = switch (tone.shape()) {
            case SINE -> 0.5;
            case SQUARE -> tone.part();
            case TRIANGLE -> (1 + tone.part()) / 2;
        };
        // a sine bends like a Gaussian of 1/(2 pi) of its cycle
        double narrow = tone.shape() == Tone.Shape.SINE ? 1 / (2 * Math.PI) : 0;
        return new CycleEvents(new double[] {up}, new double[] {down}, true, true, cyclesPerTurn, tone.frequencyHz(),
                output.phaseDeg() / 360, narrow);
    }

    /** Where the curve goes through its own mean, which is what a rig that blocks direct voltage swings around. */
    private static CycleEvents ofDrawn(Output output, DrawnCycle drawn, Input input) {
        boolean rising = !(input instanceof ReluctorInput reluctor) || reluctor.timing() == ReluctorInput.Edge.RISING;
        double meanVolts = MeanVolts.of(output);
        double[] timing = passages(drawn, meanVolts, rising);
        double[] others = passages(drawn, meanVolts, !rising);
        if (timing.length == 0) {
            throw new Refused("output " + output.name() + " is drawn flat", "draw a curve that goes up and down");
        }
        double[] opposite = new double[timing.length]; // up and down take turns
        for (int k = 0; k < timing.length; k++) {
            double at = timing[k];
            opposite[k] = Arrays.stream(others).filter(other -> other > at).findFirst().orElse(others[0] + 1);
        }
        return new CycleEvents(timing, opposite, rising, timing.length == 1, output.ratio() * 360 / drawn.overDeg(), Double.NaN,
                output.phaseDeg() / 360, 0);
    }

    private static double[] passages(DrawnCycle drawn, double level, boolean rising) {
        List<DrawnCycle.Point> points = drawn.points();
        int n = points.size();
        double sign = rising ? 1 : -1;
        List<Double> found = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            DrawnCycle.Point from = points.get(i);
            DrawnCycle.Point to = points.get((i + 1) % n);
            double before = sign * (from.volts() - level);
            double after = sign * (to.volts() - level);
            if (before <= 0 && after > 0) { // one that only touches from above was never below
                double degrees = to.angleDeg() - from.angleDeg() + (i + 1 == n ? drawn.overDeg() : 0);
                double at = from.angleDeg() + degrees * before / (before - after);
                if (before < 0 || wasBelow(points, i, level, sign)) {
                    found.add(at / drawn.overDeg() % 1);
                }
            }
        }
        return found.stream().sorted().mapToDouble(Double::doubleValue).toArray();
    }

    private static boolean wasBelow(List<DrawnCycle.Point> points, int index, double level, double sign) {
        int n = points.size();
        for (int back = 1; back < n; back++) {
            double volts = sign * (points.get((index - back + n) % n).volts() - level);
            if (volts != 0) {
                return volts < 0;
            }
        }
        return false;
    }

    private static CycleEvents ofBursts(Output output, Bursts bursts, Input input) {
        if (!(input instanceof ResistiveInput)) {
            throw new Refused("output " + output.name() + " rings like a knock sensor, and this input is made for "
                    + (input instanceof PulledUpInput ? "a Hall sensor or a switch" : "a reluctor")
                    + ": it would take every swing for a tooth", Remedy.of("a knock input is a plain resistance: ")
                            .set(Control.INPUT, "resistive, resistance: 1 Mohm, needs: 50 mV").then(" with what you know of it"));
        }
        double[] timing = bursts.atDeg().stream().mapToDouble(deg -> deg / bursts.overDeg()).toArray();
        double[] lengths = intervals(timing);
        double[] opposite = new double[timing.length];
        Arrays.setAll(opposite, k -> timing[k] + 0.5 * lengths[k]);
        return new CycleEvents(timing, opposite, true, true, output.ratio() * 360 / bursts.overDeg(), Double.NaN,
                output.phaseDeg() / 360, 0);
    }

    /** For what part of the time a signal between two levels is high, or would be with the same mean; 0.01 to 0.99. */
    static double highPart(Output output) {
        double part = 0.5;
        if (output.signal() instanceof WheelSignal wheelSignal && wheelSignal.sensor() instanceof Hall hall) {
            Wheel wheel = wheelSignal.wheel();
            double onTeeth = wheel.teeth().stream().mapToDouble(Tooth::widthDeg).sum() / wheel.overDeg();
            part = hall.highVolts() > hall.lowVolts() ? onTeeth : 1 - onTeeth;
        } else if (output.signal() instanceof Tone tone && tone.shape() == Tone.Shape.SQUARE) {
            part = tone.part();
        } else if (output.signal() instanceof DrawnCycle drawn) {
            DoubleSummaryStatistics volts = drawn.points().stream().mapToDouble(DrawnCycle.Point::volts).summaryStatistics();
            part = volts.getMax() == volts.getMin() ? part
                    : (MeanVolts.of(output) - volts.getMin()) / (volts.getMax() - volts.getMin());
        }
        return Math.max(0.01, Math.min(0.99, part));
    }

    /** From each timing event to the next, cycles. */
    static double[] intervals(double[] places) {
        double[] intervals = new double[places.length];
        for (int k = 0; k < places.length; k++) {
            intervals[k] = (k + 1 < places.length ? places[k + 1] : places[0] + 1) - places[k];
        }
        return intervals;
    }

    double shortestCycles() {
        return Arrays.stream(intervals(timing)).min().orElse(1);
    }
}
