package understudy.trace;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.snakeyaml.engine.v2.nodes.Node;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.text.Fields;
import understudy.text.Problems;
import understudy.text.Values;

/** Reads the path of a circuit: points and segments by turns, from the sensor to the module. */
final class PathReader {
    private static final List<String> KEYS =
            List.of("point", "connector", "splice", "wire", "reach", "inject", "odds");
    private static final Range REACH = new Range(0.1, 600, Unit.MINUTE);
    private static final double SECONDS_PER_MINUTE = 60;
    private static final double LEAST_ODDS = 0.001;
    private static final double MOST_ODDS = 1000;
    private static final int NAME_LETTERS = 60;

    private final Problems problems;
    private final Values values;
    private final Map<String, Boolean> yesOrNo;
    private final List<Point> points = new ArrayList<>();
    private final List<Segment> segments = new ArrayList<>();
    private final Set<String> names = new HashSet<>();

    PathReader(Problems problems, Map<String, Boolean> yesOrNo) {
        this.problems = problems;
        this.values = new Values(problems);
        this.yesOrNo = yesOrNo;
    }

    List<Point> points() {
        return points;
    }

    List<Segment> segments() {
        return segments;
    }

    /** A relative weight, of any scale. */
    static double odds(Node node, Values values) {
        return values.number(node, LEAST_ODDS, MOST_ODDS);
    }

    void read(Node node) {
        List<Node> items = Fields.list(problems, node, 1, 2 * Circuit.MOST_POINTS - 1);
        if (!items.isEmpty() && items.size() < 3) {
            problems.add(node, "a path needs at least two points, and there is nothing to tell apart here",
                    "write a point, what lies between, and another point");
            return;
        }
        boolean pointIsDue = true;
        for (Node item : items) {
            Fields fields = new Fields(problems, item, "a piece of the path", KEYS);
            Optional<String> kind = fields.oneOf("point", "connector", "splice", "wire");
            if (kind.isEmpty()) {
                return; // what follows can't be told apart any more
            }
            boolean point = kind.get().equals("point");
            if (point != pointIsDue) {
                fields.problem(kind.get(), pointIsDue
                        ? "a " + kind.get() + " stands where a point is due" : "two points have nothing between them",
                        "points and what lies between them (connector, splice, wire) take turns, and a point is first and last");
                return;
            }
            if (point) {
                point(fields);
            } else {
                segment(fields, kind.get());
            }
            pointIsDue = !pointIsDue;
        }
        if (!items.isEmpty() && pointIsDue) {
            problems.add(items.get(items.size() - 1), "the path ends without a point",
                    "end it with the point at the module's pin");
        }
        if (!items.isEmpty() && points.stream().noneMatch(Point::injectable)) {
            problems.add(node, "one can inject at none of the points", "leave out \"inject: no\" where the rig can be clipped on");
        }
    }

    private void point(Fields fields) {
        fields.refuse("a point", "odds");
        boolean injectable = fields.choice("inject", yesOrNo, true);
        double reach = injectable
                ? fields.quantity("reach", REACH)
                : fields.quantity("reach", REACH, SECONDS_PER_MINUTE);
        points.add(new Point(name(fields, "point"), reach / SECONDS_PER_MINUTE, injectable));
    }

    private void segment(Fields fields, String kind) {
        fields.refuse("a " + kind, "reach", "inject");
        Segment.Kind of = Segment.Kind.valueOf(kind.toUpperCase(Locale.ROOT));
        double odds = fields.node("odds").map(node -> odds(node, values)).orElse(of.usualOdds());
        segments.add(new Segment(of, name(fields, kind), odds));
    }

    private String name(Fields fields, String key) {
        String name = fields.text(key, NAME_LETTERS, "a name");
        if (name.contains("\n")) {
            fields.problem(key, "the name has more than one line", "keep it to one line");
        } else if (!name.isEmpty() && !names.add(name.toLowerCase(Locale.ROOT))) {
            fields.problem(key, "\"" + name + "\" is a name that another piece of the path has", "give each a name of its own");
        }
        return name;
    }
}
