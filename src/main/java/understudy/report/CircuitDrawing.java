package understudy.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import understudy.trace.Circuit;
import understudy.trace.Conclusion;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Judgement;
import understudy.trace.Listing;
import understudy.trace.Numbered;
import understudy.trace.Point;
import understudy.trace.Suspect;
import understudy.trace.Verdict;

/**
 * A circuit from sensor to module, with what is known of each point; immutable.
 *
 * @param circuit   that is drawn
 * @param marks     one for each point
 * @param steps     for each point the numbers of the injections that its mark rests on
 * @param convicted indexes of the suspects that stand convicted; empty for none
 */
public record CircuitDrawing(Circuit circuit, List<PointMark> marks, List<List<Integer>> steps, Set<Integer> convicted) {

    static final String CONVICTED = "CONVICTED";

    public CircuitDrawing {
        marks = List.copyOf(marks);
        steps = steps.stream().map(List::copyOf).toList();
        convicted = Set.copyOf(convicted);
        if (marks.size() != circuit.points().size() || steps.size() != marks.size()) {
            throw new IllegalArgumentException("each point has one mark");
        }
    }

    /** By the evidence that the finding rests on: the circuit as it was found. */
    public static CircuitDrawing asFound(Hunt hunt) {
        return of(hunt.circuit(), hunt.counted(), Conclusion.of(hunt).convicted().stream().map(Suspect::index)
                .collect(Collectors.toSet()));
    }

    /** By the injections that prove a repair. */
    static CircuitDrawing repaired(Hunt hunt) {
        return of(hunt.circuit(), Repair.proof(hunt), Set.of());
    }

    private static CircuitDrawing of(Circuit circuit, List<Numbered> injections, Set<Integer> convicted) {
        List<Point> points = circuit.points();
        PointMark[] marks = new PointMark[points.size()];
        Arrays.setAll(marks, point -> points.get(point).injectable() ? PointMark.NOT_TESTED : PointMark.CLOSED);
        List<List<Integer>> steps = new ArrayList<>();
        points.forEach(point -> steps.add(new ArrayList<>()));
        for (Numbered event : injections) {
            Entry.Injected injected = (Entry.Injected) event.entry();
            int point = injected.place().point();
            marks[point] = marks[point].and(Judgement.of(injected).verdict() == Verdict.GOOD);
            steps.get(point).add(event.number());
        }
        return new CircuitDrawing(circuit, List.of(marks), steps, convicted);
    }

    /** In plain characters, a line for each point and each thing between two, from sensor to module. */
    public List<String> text() {
        List<String> lines = new ArrayList<>();
        for (Suspect suspect : circuit.suspects()) {
            boolean bad = convicted.contains(suspect.index());
            String name = suspect.name();
            lines.add((bad ? "     #  " : "     |  ") + name + (bad ? "  <-- " + CONVICTED : ""));
            if (suspect.index() < marks.size()) {
                lines.add(point(suspect.index()));
            }
        }
        return lines;
    }

    private String point(int point) {
        return String.format("%3d %s ", point + 1, marks.get(point).sign()) + circuit.points().get(point).name() + ": "
                + marks.get(point).words() + stepWords(point).map(words -> ", " + words).orElse("");
    }

    /** "step 3" or "steps 3 and 5". */
    Optional<String> stepWords(int point) {
        return Listing.steps(steps.get(point));
    }

    /** As SVG, a picture for each row of points, so that a page may break between rows. Colours, shapes and words tell the marks apart. */
    public List<String> svg() {
        return CircuitSvg.rows(this, text -> text);
    }
}
