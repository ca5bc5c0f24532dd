package understudy.trace;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The whole plan of a hunt, before it begins: where to inject first, where after a good reading and where after a bad one,
 * and so on to each end; beside what the usual ways would take.
 *
 * @param root             the first injection, or the end if there is nothing to do
 * @param minutes          expected of the plan; hunts that get rarer than {@link #RARE} count as if they went on by plain
 *                         halving, so that the plan itself can only be quicker. Exact where readings are never wrong
 * @param endToEndMinutes  expected from the sensor's connector on, point by point
 * @param halvingMinutes   expected of plain halving
 */
public record PlanTree(Node root, double minutes, double endToEndMinutes, double halvingMinutes) {

    /** Branches less probable than this are not followed. */
    public static final double RARE = 0.001;
    /** Hunts that get rarer than this add nothing that a displayed number of minutes would show. */
    private static final double LEFT_OFF = 1e-6;

    /** A place in the plan. Its probability is that of getting there. */
    public sealed interface Node {
        double probability();
    }

    /**
     * An injection.
     *
     * @param point   index of the point
     * @param minutes to reach it, clip on and read the display
     * @param good    what comes after a good reading
     * @param bad     what comes after a bad one
     */
    public record Injection(double probability, int point, double minutes, Node good, Node bad) implements Node {}

    /**
     * An end.
     *
     * @param firstSuspect the first of the suspects convicted together, counted from the sensor's side, 0, to the module
     * @param lastSuspect  the last of them: mostly the same; another where no point between them can be injected at
     * @param right        probability that it is one of them
     */
    public record Conviction(double probability, int firstSuspect, int lastSuspect, double right) implements Node {}

    /** What is too rare to be followed, or can't be at all. */
    public record Rare(double probability) implements Node {}

    /** @throws IllegalArgumentException when the evidence in the odds is impossible */
    static PlanTree of(Route route, Odds odds) {
        if (!odds.possible()) {
            throw new IllegalArgumentException("no suspect is possible, so there is no plan");
        }
        Growing growing = new Growing(route);
        Node root = growing.grow(odds, 1);
        double leftOff = route.canBeWrong() ? LEFT_OFF : 0;
        return new PlanTree(root,
                Expectation.of(route, odds, growing, leftOff).minutes(),
                Expectation.of(route, odds, new EndToEnd(route), leftOff).minutes(),
                Expectation.of(route, odds, new Halving(route), leftOff).minutes());
    }

    /** Grows the tree; after that it is the policy of the tree, and beyond it plain halving, which takes no time. */
    private static final class Growing implements Policy {
        private final Route route;
        private final Planner planner;
        private final Policy beyond;
        private final Map<List<Long>, Integer> planned = new HashMap<>();

        Growing(Route route) {
            this.route = route;
            this.planner = new Planner(route);
            this.beyond = route.canBeWrong() ? new Halving(route) : planner;
        }

        Node grow(Odds odds, double probability) {
            if (probability < RARE) {
                return new Rare(probability);
            }
            if (route.ended(odds)) {
                Route.Group group = route.likeliest(odds);
                return new Conviction(probability, group.first(), group.last(), group.probability());
            }
            int point = planned.computeIfAbsent(Expectation.key(odds), key -> planner.next(odds));
            return new Injection(probability, point, route.minutes(point), grow(odds, probability, point, true),
                    grow(odds, probability, point, false));
        }

        private Node grow(Odds odds, double probability, int point, boolean good) {
            return grow(route.after(odds, point, good), probability * route.probability(odds, point, good));
        }

        @Override
        public int next(Odds odds) {
            Integer point = planned.get(Expectation.key(odds));
            return point == null ? beyond.next(odds) : point;
        }
    }
}
