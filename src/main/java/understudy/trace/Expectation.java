package understudy.trace;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a policy comes to, computed: all hunts at once are followed, with their probabilities, hunts with the same odds
 * together.
 *
 * @param minutes    expected until the end; of the hunts that were left off, until there
 * @param injections expected number
 * @param right      probability that the group convicted holds the fault
 * @param unended    probability of the hunts that were left off
 */
record Expectation(double minutes, double injections, double right, double unended) {

    /** Against a policy that never ends. */
    private static final int MOST_INJECTIONS = 1000;

    /** @param leftOff hunts that stand less probably than this are left off; 0 where readings are never wrong gives all exactly */
    static Expectation of(Route route, Odds odds, Policy policy, double leftOff) {
        return new Following(route, policy, leftOff).follow(odds);
    }

    /** Odds that hunts stand at, as numbers to tell them by. Rounded: two orders of the same readings differ in the last bits. */
    static List<Long> key(Odds odds) {
        List<Long> key = new ArrayList<>();
        for (int suspect = 0; suspect < odds.suspects(); suspect++) {
            double probability = odds.probability(suspect);
            key.add(probability == 0 ? Long.MIN_VALUE : Math.round(StrictMath.log(probability) * 1e8));
        }
        return key;
    }

    private static final class Following {
        private record Standing(Odds odds, double probability) {
            Standing and(Standing other) {
                return new Standing(odds, probability + other.probability);
            }
        }

        private final Route route;
        private final Policy policy;
        private final double leftOff;
        private double minutes;
        private double injections;
        private double right;
        private double unended;

        Following(Route route, Policy policy, double leftOff) {
            this.route = route;
            this.policy = policy;
            this.leftOff = leftOff;
        }

        Expectation follow(Odds start) {
            Map<List<Long>, Standing> standings = Map.of(key(start), new Standing(start, 1));
            for (int count = 0; !standings.isEmpty() && count < MOST_INJECTIONS; count++) {
                Map<List<Long>, Standing> next = new LinkedHashMap<>();
                standings.values().forEach(standing -> step(standing, next));
                standings = next;
            }
            unended += standings.values().stream().mapToDouble(Standing::probability).sum();
            return new Expectation(minutes, injections, right, unended);
        }

        private void step(Standing standing, Map<List<Long>, Standing> next) {
            if (route.ended(standing.odds())) {
                right += standing.probability() * route.likeliest(standing.odds()).probability();
                return;
            }
            if (standing.probability() < leftOff) {
                unended += standing.probability();
                return;
            }
            int point = policy.next(standing.odds());
            minutes += standing.probability() * route.minutes(point);
            injections += standing.probability();
            for (boolean good : new boolean[] {true, false}) {
                double probability = standing.probability() * route.probability(standing.odds(), point, good);
                if (probability > 0) {
                    Odds after = route.after(standing.odds(), point, good);
                    next.merge(key(after), new Standing(after, probability), Standing::and);
                }
            }
        }
    }
}
