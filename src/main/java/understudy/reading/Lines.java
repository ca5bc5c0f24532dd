package understudy.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * All straight lines that pass every pair within the same distance, up and down: what rounding allows. In the plane of
 * level and slope they fill a convex polygon, cut out by two half-planes a pair; its corners tell the extremes of
 * anything linear. (The set is that of bounded-error estimation: Milanese and Vicino, Optimal estimation theory for
 * dynamic systems with set membership uncertainty, Automatica 27, 1991.)
 *
 * @param corners     in order round the polygon
 * @param middleHz    frequency at which {@code level} is taken
 */
record Lines(List<Corner> corners, double middleHz) {

    /**
     * One line.
     *
     * @param level what it shows at the middle frequency
     * @param perHz its slope
     */
    record Corner(double level, double perHz) {
        double at(double awayHz) {
            return level + perHz * awayHz;
        }
    }

    /** Beyond rounding of doubles, and far below a digit of any display. */
    private static final double HAIR = 1e-9;

    /** Empty where no line will do. There are at least two different frequencies among the pairs. */
    static Optional<Lines> within(double distance, List<Pair> pairs) {
        Pair first = pairs.stream().min(Comparator.comparingDouble(Pair::frequencyHz)).orElseThrow();
        Pair last = pairs.stream().max(Comparator.comparingDouble(Pair::frequencyHz)).orElseThrow();
        double middleHz = (first.frequencyHz() + last.frequencyHz()) / 2;
        double most = pairs.stream().mapToDouble(pair -> Math.abs(pair.shown())).max().orElseThrow();
        double allowed = distance * (1 + HAIR) + 1e-12 * most;
        double spanHz = last.frequencyHz() - first.frequencyHz();
        List<Corner> corners = new ArrayList<>();
        for (int[] side : new int[][] {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}) {
            double low = first.shown() + side[0] * allowed;
            double high = last.shown() + side[1] * allowed;
            corners.add(new Corner((low + high) / 2, (high - low) / spanHz));
        }
        for (Pair pair : pairs) {
            double awayHz = pair.frequencyHz() - middleHz;
            corners = cut(corners, awayHz, 1, pair.shown() + allowed);
            corners = cut(corners, awayHz, -1, -(pair.shown() - allowed));
        }
        return corners.isEmpty() ? Optional.empty() : Optional.of(new Lines(List.copyOf(corners), middleHz));
    }

    /** What is left of a convex polygon where {@code sign * line(awayHz) <= bound} (Sutherland and Hodgman, 1974). */
    private static List<Corner> cut(List<Corner> corners, double awayHz, int sign, double bound) {
        List<Corner> left = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            Corner here = corners.get(i);
            Corner next = corners.get((i + 1) % corners.size());
            double hereOver = sign * here.at(awayHz) - bound;
            double nextOver = sign * next.at(awayHz) - bound;
            if (hereOver <= 0) {
                left.add(here);
            }
            if (hereOver < 0 && nextOver > 0 || hereOver > 0 && nextOver < 0) {
                double part = hereOver / (hereOver - nextOver);
                left.add(new Corner(here.level() + part * (next.level() - here.level()),
                        here.perHz() + part * (next.perHz() - here.perHz())));
            }
        }
        return left;
    }

    /** What these lines show at a frequency: the limits, and the polygon's centre of gravity for the likeliest. */
    Estimate at(double frequencyHz) {
        Corner centre = centre();
        return limits(corners.stream().map(corner -> corner.at(frequencyHz - middleHz)).toList(),
                centre.at(frequencyHz - middleHz));
    }

    Estimate slope() {
        return limits(corners.stream().map(Corner::perHz).toList(), centre().perHz());
    }

    private static Estimate limits(List<Double> values, double centre) {
        double low = values.stream().mapToDouble(v -> v).min().orElseThrow();
        double high = values.stream().mapToDouble(v -> v).max().orElseThrow();
        return new Estimate(low, Math.max(low, Math.min(high, centre)), high);
    }

    /** The mean of all lines: with rounding errors spread evenly, no estimator that moves with the data errs less. */
    private Corner centre() {
        Corner first = corners.get(0);
        double area = 0;
        double level = 0;
        double perHz = 0;
        for (int i = 1; i + 1 < corners.size(); i++) {
            Corner a = corners.get(i);
            Corner b = corners.get(i + 1);
            double part = (a.level() - first.level()) * (b.perHz() - first.perHz())
                    - (b.level() - first.level()) * (a.perHz() - first.perHz());
            area += part;
            level += part * (a.level() + b.level() - 2 * first.level()) / 3;
            perHz += part * (a.perHz() + b.perHz() - 2 * first.perHz()) / 3;
        }
        return area == 0 ? first : new Corner(first.level() + level / area, first.perHz() + perHz / area);
    }
}
