package understudy.trace;

import java.util.List;
import java.util.stream.IntStream;

/**
 * A circuit as the planner sees it: n points from the sensor to the module, and n + 1 suspects, of which exactly one is bad.
 * Suspect 0 lies before point 0, suspect h between points h - 1 and h, suspect n behind the last. Suspects between which one
 * can nowhere inject form a group. The hunt ends when one group is as likely as the confidence asks. Immutable.
 *
 * <p>Within the planner the points where one can inject are counted by themselves, as tests 0 to m - 1, and so are the
 * groups, 0 to m: test k reads good if the fault lies in groups 0 to k.
 */
final class Route {

    /** The group that is likeliest to hold the fault: the suspects from first to last. */
    record Group(int first, int last, double probability) {}

    private final List<Access> points;
    private final double confidence;
    private final int[] tests;

    /**
     * @param points     from the sensor to the module, 2 or more
     * @param confidence at which a group is convicted; above 0.5, and below 1 where readings can be wrong
     * @throws IllegalArgumentException when that can't be
     */
    Route(List<Access> points, double confidence) {
        this.points = List.copyOf(points);
        this.confidence = confidence;
        this.tests = IntStream.range(0, points.size()).filter(point -> points.get(point).injectable()).toArray();
        if (points.size() < 2) {
            throw new IllegalArgumentException("a path has 2 points at least, not " + points.size());
        }
        if (!(confidence > 0.5 && confidence <= 1)) {
            throw new IllegalArgumentException("a confidence is above 0.5 and at most 1, not " + confidence);
        }
        if (confidence == 1 && canBeWrong()) {
            throw new IllegalArgumentException("where readings can be wrong nothing is ever certain: a confidence below 1 is needed");
        }
    }

    double confidence() {
        return confidence;
    }

    int tests() {
        return tests.length;
    }

    /** The point where a test injects. */
    int point(int test) {
        return tests[test];
    }

    Access access(int test) {
        return points.get(tests[test]);
    }

    boolean canBeWrong() {
        return IntStream.range(0, tests()).anyMatch(test -> access(test).canBeWrong());
    }

    Odds after(Odds odds, int point, boolean good) {
        return odds.after(point, good, points.get(point));
    }

    /** That an injection at a point will read so. */
    double probability(Odds odds, int point, boolean good) {
        double upTo = 0;
        double behind = 0;
        for (int suspect = 0; suspect < odds.suspects(); suspect++) {
            upTo += suspect <= point ? odds.probability(suspect) : 0;
            behind += suspect <= point ? 0 : odds.probability(suspect);
        }
        Access access = points.get(point);
        return upTo * access.likelihoodUpTo(good) + behind * access.likelihoodBehind(good);
    }

    double minutes(int point) {
        return points.get(point).minutes();
    }

    /** Probability of each group; they add up to 1, unless the evidence is impossible. */
    double[] groups(Odds odds) {
        if (odds.suspects() != points.size() + 1) {
            throw new IllegalArgumentException(odds.suspects() + " suspects on a path of " + points.size() + " points");
        }
        double[] groups = new double[tests() + 1];
        double sum = 0;
        for (int suspect = 0, group = 0; suspect < odds.suspects(); suspect++) {
            groups[group] += odds.probability(suspect);
            sum += odds.probability(suspect);
            group += group < tests() && tests[group] == suspect ? 1 : 0;
        }
        // exactly 1 where only one group is possible, whatever rounding did to its members
        for (int group = 0; group < groups.length && sum > 0; group++) {
            groups[group] = groups[group] == sum ? 1 : groups[group] / sum;
        }
        return groups;
    }

    /** The likeliest group, the first of equals. */
    Group likeliest(Odds odds) {
        double[] groups = groups(odds);
        int best = 0;
        for (int group = 1; group < groups.length; group++) {
            best = groups[group] > groups[best] ? group : best;
        }
        int first = best == 0 ? 0 : tests[best - 1] + 1;
        int last = best == tests() ? points.size() : tests[best];
        return new Group(first, last, groups[best]);
    }

    /** Whether there is nothing more to do: a group convicted, or evidence that can't be. */
    boolean ended(Odds odds) {
        return !odds.possible() || likeliest(odds).probability() >= confidence;
    }
}
