package understudy.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** The plan is the best there is, judged by trying all others. */
class PlannerTest {

    /** The bound that is asked for: some 60 sums and products of minutes below 100 are rounded to 1e-12 at worst. */
    private static final double SAME_MINUTES = 1e-9;

    /** All decision trees there are: of any set of suspects that is left, every point that parts it is tried. */
    private record AllTrees(Routes path) {

        double leastMinutes(int suspects) {
            double sum = odds(suspects);
            if (enough(suspects, sum)) {
                return 0;
            }
            double least = Double.POSITIVE_INFINITY;
            for (int point = 0; point < path.points().size(); point++) {
                int good = suspects & (2 << point) - 1; // the fault lies with suspect 0 to point
                int bad = suspects & ~good;
                if (path.points().get(point).injectable() && odds(good) > 0 && odds(bad) > 0) {
                    least = Math.min(least, path.points().get(point).minutes()
                            + odds(good) / sum * leastMinutes(good) + odds(bad) / sum * leastMinutes(bad));
                }
            }
            return least;
        }

        private double odds(int suspects) {
            double sum = 0;
            for (int suspect = 0; suspect < path.prior().length; suspect++) {
                sum += (suspects >> suspect & 1) == 1 ? path.prior()[suspect] : 0;
            }
            return sum;
        }

        /** One group, between two points where one can inject, holds what the confidence asks. */
        private boolean enough(int suspects, double sum) {
            double group = 0;
            for (int suspect = 0; suspect < path.prior().length; suspect++) {
                group += (suspects >> suspect & 1) == 1 ? path.prior()[suspect] : 0;
                if (group >= path.confidence() * sum) {
                    return true;
                }
                boolean parted = suspect < path.points().size() && path.points().get(suspect).injectable();
                group = parted ? 0 : group;
            }
            return false;
        }
    }

    @Property(tries = 600)
    void withoutErrorsThePlanIsAsGoodAsTheBestOfAllTrees(@ForAll long seed, @ForAll @IntRange(min = 2, max = 8) int points) {
        Random random = new Random(seed);
        double confidence = random.nextBoolean() ? 1 : 0.55 + 0.44 * random.nextDouble();
        Routes path = Routes.random(random, points, random.nextBoolean() ? 1 : 0.7, 0, 0, confidence);
        double[] prior = path.prior();
        if (random.nextInt(3) == 0) {
            prior[1 + random.nextInt(points)] = 0;
        }
        double least = new AllTrees(path).leastMinutes((1 << points + 1) - 1);
        double planned = new Planner(path.route()).choose(path.odds()).map(Planner.Choice::minutes).orElse(0.0);
        assertThat(planned).isCloseTo(least, within(SAME_MINUTES));
        // and following it step by step comes to the same
        Expectation followed = Expectation.of(path.route(), path.odds(), new Planner(path.route()), 0);
        assertThat(followed.minutes()).isCloseTo(least, within(SAME_MINUTES));
        assertThat(followed.right()).isGreaterThan(confidence - SAME_MINUTES);
        assertThat(PlanTree.of(path.route(), path.odds()).minutes()).isCloseTo(least, within(SAME_MINUTES));
    }

    @Test
    void equalOddsAndMinutesAreHalvedAndTheRunnerUpIsNamed() {
        List<Access> points = new ArrayList<>();
        for (double minutes : new double[] {1, 1, 1}) {
            points.add(new Access(minutes, true, 0, 0));
        }
        Planner.Choice choice = new Planner(new Route(points, 1)).choose(Odds.of(1, 1, 1, 1)).orElseThrow();
        // two halvings of four; beginning at an end: 1 + 3/4 (1 + 2/3)
        assertThat(choice.point()).isEqualTo(1);
        assertThat(choice.minutes()).isCloseTo(2, within(SAME_MINUTES));
        assertThat(choice.goodProbability()).isEqualTo(0.5);
        assertThat(choice.exact()).isTrue();
        assertThat(choice.runnerUp().orElseThrow().point()).isZero();
        assertThat(choice.runnerUp().orElseThrow().minutes()).isCloseTo(2.25, within(SAME_MINUTES));
    }

    /**
     * What no policy whatever can be below where readings can be wrong: the best over all policies of the minutes spent within
     * so many injections, those after them for nothing. By plain recursion over counts of readings.
     */
    private static final class Floor {
        private final Routes path;
        private final Map<List<Integer>, Double> known = new HashMap<>();

        Floor(Routes path) {
            this.path = path;
        }

        double minutes(int injections) {
            return weighted(new int[2 * path.points().size()], path.prior(), injections) / Arrays.stream(path.prior()).sum();
        }

        /**
         * Minutes times the joint odds of these readings.
         *
         * @param counts of good and of bad readings, point by point
         * @param joint  odds of each suspect and the readings
         */
        private double weighted(int[] counts, double[] joint, int injections) {
            List<Integer> key = Arrays.stream(counts).boxed().toList(); // their sum tells the injections left
            Double before = known.get(key);
            if (before != null) {
                return before;
            }
            double sum = Arrays.stream(joint).sum();
            boolean over = injections == 0 || Arrays.stream(joint).max().orElseThrow() >= path.confidence() * sum;
            double least = over ? 0 : Double.POSITIVE_INFINITY;
            for (int point = 0; point < path.points().size() && !over; point++) {
                double value = sum * path.points().get(point).minutes();
                for (int bad = 0; bad < 2; bad++) {
                    counts[2 * point + bad]++;
                    value += weighted(counts, with(joint, point, bad == 1), injections - 1);
                    counts[2 * point + bad]--;
                }
                least = Math.min(least, value);
            }
            known.put(key, least);
            return least;
        }

        private double[] with(double[] joint, int point, boolean bad) {
            Access access = path.points().get(point);
            double[] after = joint.clone();
            for (int suspect = 0; suspect < joint.length; suspect++) {
                double badIfThis = suspect <= point ? access.wronglyBad() : 1 - access.wronglyGood();
                after[suspect] *= bad ? badIfThis : 1 - badIfThis;
            }
            return after;
        }
    }

    /** What the horizon may cost. Seen: 1.6 parts in 10 000 at worst, of which some is the floor's own. */
    private static final double NEARLY = 1.001;

    @Test
    void withErrorsNoPolicyWhateverIsMuchQuickerThanThePlan() {
        for (int seed = 0; seed < 16; seed++) {
            Random random = new Random(seed);
            int points = 2 + seed % 2;
            Routes path = unequal(random, points, 0.1 * random.nextDouble(), 0.1 * random.nextDouble());
            double floor = new Floor(path).minutes(points == 2 ? 20 : 12);
            Expectation planned = Expectation.of(path.route(), path.odds(), new Planner(path.route()), 1e-8);
            double ratio = planned.minutes() / floor;
            // the rest of the hunts left off isn't counted: a part in 10^5 of them, which may take some times as long as others
            assertThat(ratio).as("circuit %d", seed).isBetween(1 - 1e-4, NEARLY);
            assertThat(planned.unended()).isLessThan(1e-5);
            assertThat(planned.right()).isGreaterThan(0.95);
        }
    }

    /** Minutes of 4 to 8: with points too quick to reach, a floor would spend all its injections there and look better than it is. */
    private static Routes unequal(Random random, int points, double wronglyBad, double wronglyGood) {
        List<Access> path = new ArrayList<>();
        for (int point = 0; point < points; point++) {
            path.add(new Access(4 + 4 * random.nextDouble(), true, wronglyBad, wronglyGood));
        }
        return new Routes(path, random.doubles(points + 1, 1, 10).toArray(), 0.95);
    }

    @Test
    void sixtyFourPointsAreWithinTheWorkThatAnAnswerMayTake() {
        Random random = new Random(64);
        Routes path = Routes.random(random, 64, 0.05, 0.05, 0.95);
        // the first horizon is always finished: the intervals of 65 groups, 65^3 / 6 terms each, for the tests to look at and for
        // two readings of each; after that it is the work itself, and the intervals at which it ran out
        long mostSteps = Lookahead.WORK + 10 * (65 * 65 * 65 / 6);
        Planner planner = new Planner(path.route());
        int answers = 0;
        for (int fault = 0; fault <= 64; fault += 8) {
            for (Odds odds = path.odds(); !path.route().ended(odds); answers++) {
                long before = planner.steps();
                int point = planner.next(odds);
                assertThat(planner.steps() - before).isLessThan(mostSteps);
                odds = path.route().after(odds, point, fault <= point == random.nextDouble() >= 0.05);
            }
        }
        assertThat(answers).isGreaterThan(9);
    }
}
