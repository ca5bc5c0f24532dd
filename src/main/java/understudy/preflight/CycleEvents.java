package understudy.preflight;

import java.util.Arrays;
import java.util.List;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Reluctor;
import understudy.pattern.Tone;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;
import understudy.pattern.WheelSignal;
import understudy.wave.OutputFacts;

/**
 * Where in one cycle of a healthy output the timing events are, and the transitions that go the other way. A plain ring
 * of equal teeth repeats with every tooth, so its cycle is one pitch.
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

    /** @throws CannotJudge for a signal that has no teeth and is no tone, or that stands still */
    static CycleEvents of(Setup setup) {
        Output output = setup.output();
        if (output.signal() instanceof WheelSignal wheelSignal) {
            if (output.ratio() == 0) {
                throw new CannotJudge("output " + output.name() + " stands still", "choose an output that turns");
            }
            return ofWheel(setup.pattern(), output, wheelSignal);
        } else if (output.signal() instanceof Tone tone) {
            return ofTone(output, tone);
        }
        throw new CannotJudge("output " + output.name() + " is neither a wheel nor a tone",
                "an input decodes teeth; choose a pattern that has some");
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

    /** For what part of the time a two-level signal is high; half for all others. 0.01 to 0.99. */
    static double highPart(Output output) {
        double part = 0.5;
        if (output.signal() instanceof WheelSignal wheelSignal && wheelSignal.sensor() instanceof Hall hall) {
            Wheel wheel = wheelSignal.wheel();
            double onTeeth = wheel.teeth().stream().mapToDouble(Tooth::widthDeg).sum() / wheel.overDeg();
            part = hall.highVolts() > hall.lowVolts() ? onTeeth : 1 - onTeeth;
        } else if (output.signal() instanceof Tone tone && tone.shape() == Tone.Shape.SQUARE) {
            part = tone.part();
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
