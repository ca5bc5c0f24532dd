package understudy.measure;

import java.util.Arrays;
import java.util.List;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Reluctor;
import understudy.pattern.Tone;
import understudy.pattern.WheelSignal;
import understudy.wave.OutputFacts;
import understudy.wave.OutputFacts.Kind;
import understudy.refusal.Refused;

/**
 * Where in its cycle an output of a pattern crosses its middle, as it is drawn.
 *
 * @param rising        positive-going crossings, in cycles, 0 to below 1, rising order
 * @param falling       likewise negative-going
 * @param bothTell      both directions are edges of the signal; else only those that are listed, at the signal's own zero
 * @param cyclesPerTurn of the pattern's speed; NaN for a tone of fixed frequency
 * @param rmsVolts      about the middle, for a tone; NaN for others
 */
record DrawnEdges(double[] rising, double[] falling, boolean bothTell, double cyclesPerTurn, double rmsVolts) {

    /** @throws Refused if it has neither teeth nor a plain shape */
    static DrawnEdges of(Pattern pattern, int output) {
        Output played = pattern.outputs().get(output);
        OutputFacts facts = OutputFacts.of(pattern).get(output);
        if (played.signal() instanceof Tone tone) {
            return ofTone(tone, facts);
        }
        if (!(played.signal() instanceof WheelSignal wheel)) {
            throw new Refused("output " + played.name() + " of " + pattern.id() + " has neither teeth nor a plain shape, so"
                    + " edges have no place in it", "choose an output with a wheel, a sine, a triangle or a square");
        }
        if (wheel.sensor() instanceof Hall hall) {
            boolean teethHigh = hall.highVolts() > hall.lowVolts();
            double[] leading = cycles(facts, Kind.LEADING_EDGE);
            double[] trailing = cycles(facts, Kind.TRAILING_EDGE);
            return new DrawnEdges(teethHigh ? leading : trailing, teethHigh ? trailing : leading, true,
                    facts.cyclesPerTurn(), Double.NaN);
        }
        double[] crossings = cycles(facts, Kind.CROSSING);
        boolean upwards = ((Reluctor) wheel.sensor()).reversed();
        return new DrawnEdges(upwards ? crossings : new double[0], upwards ? new double[0] : crossings, false,
                facts.cyclesPerTurn(), Double.NaN);
    }

    /** A sine starts at its middle, rising; a triangle at its lowest, rising; a square at its rising edge. */
    private static DrawnEdges ofTone(Tone tone, OutputFacts facts) {
        double pp = tone.peakToPeakVolts();
        double part = tone.part();
        return switch (tone.shape()) {
            case SINE -> tone(0, 0.5, pp / Math.sqrt(8), facts);
            case TRIANGLE -> tone(part / 2, (1 + part) / 2, pp / Math.sqrt(12), facts);
            case SQUARE -> tone(0, part, pp * Math.sqrt(part * (1 - part)), facts);
        };
    }

    private static DrawnEdges tone(double rising, double falling, double rmsVolts, OutputFacts facts) {
        return new DrawnEdges(new double[] {rising}, new double[] {falling % 1}, true, facts.cyclesPerTurn(), rmsVolts);
    }

    DrawnEdges inverted() {
        return new DrawnEdges(falling, rising, bothTell, cyclesPerTurn, rmsVolts);
    }

    boolean fixedFrequency() {
        return Double.isNaN(cyclesPerTurn);
    }

    private static double[] cycles(OutputFacts facts, Kind kind) {
        List<OutputFacts.Event> events = facts.events().stream().filter(event -> event.kind() == kind).toList();
        double[] cycles = events.stream().mapToDouble(event -> event.angleDeg() / facts.overDeg())
                .map(at -> at - Math.floor(at)).toArray();
        Arrays.sort(cycles);
        return cycles;
    }
}
