package understudy.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.quantity.Range;
import understudy.reading.Reading;

/**
 * A harness path from a sensor to a module, as a circuit file declares it; immutable.
 *
 * @param id              the name it is called by: the file's name without its ending
 * @param title           one line
 * @param vehicle         what it is part of, if the file says
 * @param source          where its numbers come from
 * @param patternName     the pattern that stands in for the sensor: a shipped one, or a file beside the circuit's
 * @param outputName      which output of it, if not the first
 * @param speed           the speed to inject, in the pattern's words, if not the pattern's default
 * @param input           the module's input, in the words of the command line, if the file says
 * @param pinVolts        what may lie on the pins before one clips on, if the file says
 * @param reading         what the module displays
 * @param reference       a circuit that works, on which the method is proven first: its name or file
 * @param points          from sensor to module, 2 to {@value #MOST_POINTS}
 * @param segments        one less: segment k lies between points k and k + 1
 * @param sensorOdds      how likely the sensor's own side (sensor, ring, air gap) is bad, against the segments
 * @param moduleOdds      likewise the module
 * @param wronglyBad      share of injections that read bad though the way to the module is sound; 0 to below 0.5
 * @param wronglyGood     share that read good though it is not; 0 to below 0.5
 * @param confidence      probability at which one suspect is convicted; above 0.5, below 1
 * @param comesAndGoes    whether the complaint comes and goes, so that a reading counts only while things are moved
 */
public record Circuit(
        String id,
        String title,
        Optional<String> vehicle,
        String source,
        String patternName,
        Optional<String> outputName,
        Optional<String> speed,
        Optional<String> input,
        Optional<Range> pinVolts,
        Reading reading,
        Optional<String> reference,
        List<Point> points,
        List<Segment> segments,
        double sensorOdds,
        double moduleOdds,
        double wronglyBad,
        double wronglyGood,
        double confidence,
        boolean comesAndGoes) {

    static final int MOST_POINTS = 64;

    public Circuit {
        points = List.copyOf(points);
        segments = List.copyOf(segments);
        if (points.size() < 2 || points.size() > MOST_POINTS || segments.size() != points.size() - 1) {
            throw new IllegalArgumentException("a path alternates between points and segments and begins and ends with a point");
        }
    }

    /** Everything that may be bad, from the sensor's side to the module: one more than there are points. */
    public List<Suspect> suspects() {
        List<Suspect> suspects = new ArrayList<>();
        suspects.add(new Suspect(0, Suspect.Side.SENSOR, "the sensor's side: sensor, ring or air gap", sensorOdds));
        for (int k = 0; k < segments.size(); k++) {
            Segment segment = segments.get(k);
            suspects.add(new Suspect(k + 1, Suspect.Side.SEGMENT, segment.kind().word() + " \"" + segment.name() + "\"",
                    segment.odds()));
        }
        suspects.add(new Suspect(points.size(), Suspect.Side.MODULE, "the module", moduleOdds));
        return suspects;
    }

    /** As the planner sees it. */
    Route route() {
        return new Route(points.stream().map(point -> new Access(point.reachMinutes(), point.injectable(), wronglyBad, wronglyGood))
                .toList(), confidence);
    }

    /** What is believed before anything is measured. */
    Odds odds() {
        return Odds.of(suspects().stream().mapToDouble(Suspect::odds).toArray());
    }

    /** The whole plan, before anything is measured. */
    public PlanTree plan() {
        return PlanTree.of(route(), odds());
    }

    /** The point nearest to the sensor at which one can inject. */
    public int firstInjectable() {
        for (int point = 0; point < points.size(); point++) {
            if (points.get(point).injectable()) {
                return point;
            }
        }
        throw new IllegalStateException("a circuit has a point where one can inject");
    }

    /** Where these neighbouring suspects lie, in words: from the point before the first of them to the point behind the last. */
    public String between(List<Suspect> suspects) {
        int from = suspects.get(0).index() - 1;
        int to = suspects.get(suspects.size() - 1).index();
        if (from < 0) {
            return to < points.size() ? "before " + points.get(to).name() : "anywhere in the circuit";
        }
        String start = points.get(from).name();
        return to < points.size() ? "between " + start + " and " + points.get(to).name() : "behind " + start;
    }
}
