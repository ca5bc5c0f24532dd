package understudy.measure;

import java.util.Arrays;
import java.util.List;
import understudy.measure.DetectedWheel.Polarity;
import understudy.measure.DetectedWheel.Sensor;
import understudy.measure.EdgeTiming.Course;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Reluctor;
import understudy.pattern.WheelSignal;
import understudy.wave.OutputFacts;
import understudy.wave.OutputFacts.Kind;

/**
 * How far the edges of a recording lie from where a pattern puts them, at a speed that is steady or changes linearly.
 *
 * <p>Of a Hall wheel both edges of every tooth count, at the level where pulses are as wide as drawn; of a reluctor the
 * crossings at its teeth.
 *
 * @param timing   in turns of the wheel; cycles where it is drawn over two
 * @param inverted the recording is upside down against the pattern
 * @param startHz  speed of the pattern at the first edge, turns per second
 * @param endHz    at the last
 */
public record PatternTiming(EdgeTiming timing, boolean inverted, double startHz, double endHz) {

    /**
     * @param volts  a recording of one output; no edge missing
     * @param output of the pattern, from 0; a wheel
     * @throws MeasureException if the output is no wheel, or if the edges don't follow its geometry
     */
    public static PatternTiming of(double[] volts, double rateHz, Pattern pattern, int output) {
        Output played = pattern.outputs().get(output);
        if (!(played.signal() instanceof WheelSignal wheel)) {
            throw new MeasureException("output " + played.name() + " of " + pattern.id()
                    + " has no teeth, so edges have no place in it; choose an output with a wheel");
        }
        OutputFacts facts = OutputFacts.of(pattern).get(output);
        return wheel.sensor() instanceof Hall hall
                ? ofHall(volts, rateHz, facts, hall)
                : ofReluctor(volts, rateHz, facts, (Reluctor) wheel.sensor());
    }

    private static PatternTiming ofHall(double[] volts, double rateHz, OutputFacts facts, Hall hall) {
        boolean teethHigh = hall.highVolts() > hall.lowVolts();
        double[] leading = turns(facts, Kind.LEADING_EDGE);
        double[] trailing = turns(facts, Kind.TRAILING_EDGE);
        double[] rising = teethHigh ? leading : trailing;
        double[] falling = teethHigh ? trailing : leading;
        try {
            return of(HallTiming.of(volts, rateHz, rising, falling, Course.LINEAR).timing(), false, facts);
        } catch (MeasureException asDrawn) {
            try {
                return of(HallTiming.of(volts, rateHz, falling, rising, Course.LINEAR).timing(), true, facts);
            } catch (MeasureException upsideDown) {
                throw asDrawn;
            }
        }
    }

    private static PatternTiming ofReluctor(double[] volts, double rateHz, OutputFacts facts, Reluctor reluctor) {
        DetectedWheel wheel = WheelDetector.detect(volts, rateHz, Sensor.RELUCTOR);
        Polarity drawn = reluctor.reversed() ? Polarity.REVERSED : Polarity.NORMAL;
        boolean inverted = wheel.polarity() != Polarity.UNKNOWN && wheel.polarity() != drawn;
        return of(EdgeTiming.of(wheel.instantsSeconds(), turns(facts, Kind.CROSSING), Course.LINEAR), inverted, facts);
    }

    private static PatternTiming of(EdgeTiming timing, boolean inverted, OutputFacts facts) {
        return new PatternTiming(timing, inverted, timing.startHz() / facts.cyclesPerTurn(),
                timing.endHz() / facts.cyclesPerTurn());
    }

    /** Where in the cycle events of a kind lie, in cycles, rising, from 0 to below 1. */
    private static double[] turns(OutputFacts facts, Kind kind) {
        List<OutputFacts.Event> events = facts.events().stream().filter(event -> event.kind() == kind).toList();
        double[] turns = events.stream().mapToDouble(event -> event.angleDeg() / facts.overDeg())
                .map(cycles -> cycles - Math.floor(cycles)).toArray();
        Arrays.sort(turns);
        return turns;
    }
}
