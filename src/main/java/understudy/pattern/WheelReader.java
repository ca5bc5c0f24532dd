package understudy.pattern;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.text.Fields;
import understudy.text.Problems;
import understudy.text.Values;

/** Reads a wheel in any of its three descriptions: even positions, teeth one by one, or edges as drawn. */
final class WheelReader {
    private final Problems problems;
    private final Values values;
    private final boolean byCentres;

    /** @param byCentres whether angles mean centres (reluctor) or leading edges (Hall) */
    WheelReader(Problems problems, boolean byCentres) {
        this.problems = problems;
        this.values = new Values(problems);
        this.byCentres = byCentres;
    }

    /** A tooth and where it was written. */
    private record Drawn(Tooth tooth, Node node) {}

    Optional<Wheel> read(Node node) {
        Fields fields = new Fields(problems, node, "a wheel", List.of(
                "over", "teeth", "missing", "missing-at", "width", "widths", "teeth-at", "edges-at", "turned"));
        double overDeg = OutputReader.span(fields);
        double turnedDeg = fields.quantity("turned", FormatLimits.PHASE, 0);
        String kind = fields.oneOf("teeth", "teeth-at", "edges-at").orElse("");
        int positions = 0;
        if (kind.equals("teeth")) {
            positions = fields.whole("teeth", 1, FormatLimits.MOST_POSITIONS);
        } else if (!kind.isEmpty()) {
            fields.refuse("\"" + kind + "\"", "missing", "missing-at", "width", "widths");
        }
        List<Drawn> drawn = switch (kind) {
            case "teeth" -> positions > 0 ? even(fields, positions, overDeg) : List.of();
            case "teeth-at" -> listed(fields, overDeg);
            case "edges-at" -> edges(fields, overDeg);
            default -> List.of();
        };
        if (!fields.clean() || !apart(drawn, overDeg)) {
            return Optional.empty();
        }
        List<Tooth> teeth = drawn.stream().map(Drawn::tooth).toList();
        double pitchDeg = positions > 0 ? overDeg / positions : leastPitchDeg(teeth, overDeg);
        return Optional.of(new Wheel(overDeg, pitchDeg, turned(teeth, turnedDeg, overDeg)));
    }

    private List<Drawn> even(Fields fields, int positions, double overDeg) {
        Set<Integer> missing = missing(fields, positions);
        List<Width> widths = widths(fields, positions, overDeg / positions);
        List<Drawn> teeth = new ArrayList<>();
        for (int i = 0; i < widths.size() && fields.clean(); i++) {
            if (!missing.contains(i + 1)) {
                teeth.add(new Drawn(tooth(i + 1, i * overDeg / positions, widths.get(i).deg()), widths.get(i).node()));
            }
        }
        return teeth;
    }

    private Tooth tooth(int number, double angleDeg, double widthDeg) {
        return new Tooth(number, byCentres ? angleDeg - widthDeg / 2 : angleDeg, widthDeg);
    }

    private Set<Integer> missing(Fields fields, int positions) {
        Set<Integer> missing = new HashSet<>();
        if (fields.has("missing") && fields.has("missing-at")) {
            fields.oneOf("missing", "missing-at");
        } else if (fields.has("missing")) {
            int count = fields.whole("missing", 0, positions - 1);
            for (int i = 0; i < count; i++) {
                missing.add(positions - i);
            }
        }
        fields.node("missing-at").ifPresent(node -> missing.addAll(numbers(node, positions, problems)));
        if (missing.contains(1) && fields.has("missing-at")) {
            fields.problem("missing-at", "position 1 is missing, but angle 0 is on its tooth",
                    "number the positions from the first tooth after a gap");
        }
        return missing;
    }

    /** Numbers of teeth or positions: one, or a list without repeats. */
    static List<Integer> numbers(Node node, int most, Problems problems) {
        Values values = new Values(problems);
        if (!(node instanceof SequenceNode)) {
            int number = values.whole(node, 1, most);
            return number == 0 ? List.of() : List.of(number);
        }
        List<Integer> numbers = new ArrayList<>();
        for (Node item : Fields.list(problems, node, 1, FormatLimits.MOST_POSITIONS)) {
            int number = values.whole(item, 1, most);
            if (number > 0 && numbers.contains(number)) {
                problems.add(item, "number " + number + " is in the list twice", "keep one of them");
            } else if (number > 0) {
                numbers.add(number);
            }
        }
        return numbers;
    }

    private record Width(double deg, Node node) {}

    /** One for each position; fewer where they can't be read. */
    private List<Width> widths(Fields fields, int positions, double pitchDeg) {
        if (!fields.has("widths")) {
            Width each = new Width(fields.quantity("width", FormatLimits.WIDTH, pitchDeg / 2), fields.place("width"));
            return Collections.nCopies(positions, each);
        }
        if (fields.has("width")) {
            fields.oneOf("width", "widths");
        }
        List<Node> nodes = fields.list("widths", 1, FormatLimits.MOST_POSITIONS);
        if (!nodes.isEmpty() && nodes.size() != positions) {
            fields.problem("widths", "there are " + nodes.size() + " widths for " + positions + " positions",
                    "write one for each position, the missing ones included");
        }
        return nodes.stream().map(node -> new Width(values.quantity(node, FormatLimits.WIDTH), node)).toList();
    }

    private List<Drawn> listed(Fields fields, double overDeg) {
        List<Drawn> teeth = new ArrayList<>();
        double previousDeg = Double.NEGATIVE_INFINITY;
        for (Node item : fields.list("teeth-at", 1, FormatLimits.MOST_POSITIONS)) {
            Fields tooth = new Fields(problems, item, "a tooth", List.of("angle", "width"));
            double angleDeg = tooth.quantity("angle", FormatLimits.angle(overDeg));
            double widthDeg = tooth.quantity("width", FormatLimits.WIDTH);
            if (angleDeg >= overDeg) {
                tooth.problem("angle", "this angle is where the next round begins", "write 0 deg for it, first in the list");
            } else if (angleDeg <= previousDeg) {
                tooth.problem("angle", "this tooth does not come after the one before it", "list the teeth by rising angle");
            }
            if (tooth.clean()) {
                previousDeg = angleDeg;
                teeth.add(new Drawn(tooth(teeth.size() + 1, angleDeg, widthDeg), item));
            }
        }
        return teeth;
    }

    private List<Drawn> edges(Fields fields, double overDeg) {
        List<Node> nodes = fields.list("edges-at", 2, 2 * FormatLimits.MOST_POSITIONS);
        if (nodes.size() % 2 != 0) {
            fields.problem("edges-at", "there are " + nodes.size() + " edges", "each that rises needs one that falls: "
                    + "write an even number");
            return List.of();
        }
        List<Drawn> teeth = new ArrayList<>();
        double risingDeg = 0;
        double previousDeg = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < nodes.size(); i++) {
            double edgeDeg = values.quantity(nodes.get(i), FormatLimits.angle(overDeg));
            if (edgeDeg <= previousDeg) {
                problems.add(nodes.get(i), "this edge does not come after the one before it", "list the edges by rising angle");
            } else if (i % 2 == 0) {
                risingDeg = edgeDeg;
            } else if (edgeDeg > risingDeg) {
                teeth.add(new Drawn(new Tooth(i / 2 + 1, risingDeg, edgeDeg - risingDeg), nodes.get(i)));
            }
            previousDeg = edgeDeg;
        }
        return teeth;
    }

    private boolean apart(List<Drawn> teeth, double overDeg) {
        for (int i = 0; i < teeth.size(); i++) {
            Tooth tooth = teeth.get(i).tooth();
            Tooth next = teeth.get((i + 1) % teeth.size()).tooth();
            double nextDeg = next.leadingDeg() + (i + 1 < teeth.size() ? 0 : overDeg);
            if (tooth.trailingDeg() >= nextDeg) {
                problems.add(teeth.get(i).node(), "tooth " + tooth.number() + " reaches into tooth " + next.number(),
                        "make it narrower: " + (byCentres ? "the two centres" : "the two leading edges") + " are "
                                + shortly(gapDeg(tooth, next, overDeg)) + " apart");
                return false; // even teeth would all say the same
            }
        }
        return !teeth.isEmpty();
    }

    private double gapDeg(Tooth tooth, Tooth next, double overDeg) {
        double apartDeg = byCentres ? next.centreDeg() - tooth.centreDeg() : next.leadingDeg() - tooth.leadingDeg();
        return apartDeg > 0 ? apartDeg : apartDeg + overDeg;
    }

    private static String shortly(double deg) {
        return new Quantity(deg, Unit.DEGREE).rounded(4);
    }

    private static double leastPitchDeg(List<Tooth> teeth, double overDeg) {
        double least = teeth.get(0).centreDeg() + overDeg - teeth.get(teeth.size() - 1).centreDeg();
        for (int i = 1; i < teeth.size(); i++) {
            least = Math.min(least, teeth.get(i).centreDeg() - teeth.get(i - 1).centreDeg());
        }
        return least;
    }

    /** Turned by so much, back into one round, by angle. */
    private List<Tooth> turned(List<Tooth> teeth, double turnedDeg, double overDeg) {
        return teeth.stream().map(tooth -> {
            double angleDeg = byCentres ? tooth.centreDeg() : tooth.leadingDeg();
            double rounds = Math.floor((angleDeg + turnedDeg) / overDeg);
            return new Tooth(tooth.number(), tooth.leadingDeg() + turnedDeg - rounds * overDeg, tooth.widthDeg());
        }).sorted(Comparator.comparingDouble(Tooth::leadingDeg)).toList();
    }
}
