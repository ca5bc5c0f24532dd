package understudy.trace;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;

/**
 * Chooses the injection that leaves the fewest expected minutes until one group of suspects is settled, counting that a
 * reading can be wrong.
 *
 * <p>Without errors this is the test-sequencing problem on a line: dynamic programming over intervals of suspects gives the
 * optimal tree. With errors the state is what is believed: every choice and both readings are searched to a horizon of some
 * injections, beliefs that different orders lead to are worked out once, and beyond the horizon the interval programme is
 * the estimate, each injection counted as often as so unreliable a reading has to be taken to tell as much as a sure one
 * (the capacity of a binary symmetric channel: Cover and Thomas, Elements of Information Theory, 7.1.4). The horizon is as
 * deep as a fixed amount of work allows, counted and not timed, so that the same evidence gives the same advice everywhere.
 *
 * <p>Owned by one thread.
 */
final class Planner {

    /** In steps of the interval programme's inner loop: some 10 ms. */
    private static final long MOST_WORK = 4_000_000;
    private static final int DEEPEST = 60;

    private final Task task;
    private final double[] surely;
    private final Map<Long, Double> known = new HashMap<>();
    private final long mostWork;
    private long work;

    Planner(Task task) {
        this(task, MOST_WORK);
    }

    Planner(Task task, long mostWork) {
        this.task = task;
        this.mostWork = mostWork;
        double wrong = (task.wronglyBad() + task.wronglyGood()) / 2;
        double told = 1 - entropyBits(wrong);
        this.surely = Arrays.stream(task.minutes()).map(minutes -> minutes / told).toArray();
    }

    private static double entropyBits(double part) {
        return part <= 0 ? 0 : -(part * Math.log(part) + (1 - part) * Math.log(1 - part)) / Math.log(2);
    }

    /**
     * @param cut     to inject at; -1 when the belief is settled, or nothing can be told apart
     * @param minutes expected until it is settled
     */
    record Choice(int cut, double minutes) {}

    /** The best next injection. */
    Choice choose(double[] belief) {
        if (task.settled(belief) || task.cuts() == 0) {
            return new Choice(-1, 0);
        }
        Choice best = search(belief, 1);
        long before = work;
        for (int horizon = 2; horizon <= DEEPEST && noisy(); horizon++) {
            // the next horizon will cost at least as much more as this one did
            if (work * Math.max(2.0, (double) work / before) > mostWork) {
                break;
            }
            before = Math.max(1, work);
            best = search(belief, horizon);
        }
        return best;
    }

    /** Without errors the estimate is exact, and there is nothing to look ahead for. */
    private boolean noisy() {
        return task.wronglyBad() > 0 || task.wronglyGood() > 0;
    }

    /** How much was done for the latest choice. */
    long work() {
        return work;
    }

    private Choice search(double[] belief, int horizon) {
        known.clear();
        work = 0;
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int cut = 0; cut < task.cuts(); cut++) {
            double minutes = through(belief, cut, horizon, 0);
            if (minutes < least) {
                least = minutes;
                best = cut;
            }
        }
        return new Choice(best, least);
    }

    /** Expected minutes when the next injection is at this cut. */
    private double through(double[] belief, int cut, int horizon, long key) {
        double minutes = task.minutes()[cut];
        double[] after = new double[belief.length];
        for (boolean good : new boolean[] {true, false}) {
            double probability = task.read(belief, cut, good, after);
            if (probability > 0) {
                minutes += probability * toCome(after, horizon - 1, task.key(key, cut, good));
            }
        }
        return minutes;
    }

    private double toCome(double[] belief, int horizon, long key) {
        if (task.settled(belief)) {
            return 0;
        }
        long state = key + horizon * 0x9E3779B97F4A7C15L;
        Double before = known.get(state);
        if (before != null) {
            return before;
        }
        double least;
        if (horizon == 0) {
            least = estimate(belief);
        } else {
            least = Double.POSITIVE_INFINITY;
            for (int cut = 0; cut < task.cuts(); cut++) {
                least = Math.min(least, through(belief, cut, horizon, key));
            }
        }
        known.put(state, least);
        return least;
    }

    /**
     * Expected minutes if readings were never wrong but cost as much more as unreliable ones do: the least over all trees
     * that part an interval of groups in two until one group in it is likely enough. Exact when there are no errors.
     */
    double estimate(double[] belief) {
        int groups = belief.length;
        double[][] least = new double[groups][groups];
        for (int from = groups - 1; from >= 0; from--) {
            double weight = belief[from];
            double most = belief[from];
            for (int to = from + 1; to < groups; to++) {
                weight += belief[to];
                most = Math.max(most, belief[to]);
                if (most >= task.confidence() * weight) {
                    continue; // settled, or impossible: nothing more to do
                }
                double best = Double.POSITIVE_INFINITY;
                for (int cut = from; cut < to; cut++) {
                    best = Math.min(best, weight * surely[cut] + least[from][cut] + least[cut + 1][to]);
                }
                least[from][to] = best;
                work += to - from;
            }
        }
        return least[0][groups - 1];
    }
}
