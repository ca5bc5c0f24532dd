package understudy.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The best plan where readings can be wrong, as far ahead as the work allows. What is known is then a probability for each
 * group, and
 * <pre>
 *   V(q) = 0, if one group is likely enough; else the least over tests k of  c(k) + sum over readings of P(reading) V(q after it)
 * </pre>
 * which is followed exactly to a horizon of so many injections. Readings in another order lead to the same q, which is
 * looked at once. Beyond the horizon an estimate stands in: {@link Intervals} on the probabilities by then, a minute
 * dearer by what a reading that can be wrong tells less (its capacity, C. E. Shannon, "A Mathematical Theory of
 * Communication", 1948, section 12). The horizon is deepened until the work is used up; the last that was finished counts.
 * Work is counted, not timed, so that the same odds give the same plan on every machine.
 *
 * <p>Tests whose answer is all but known are passed over ({@link #DOUBT}). Each injection then tells at least something, and
 * a hunt that follows the plan ends.
 */
final class Lookahead {

    /** What the search found at one test: minutes until the end if it comes first. */
    record Option(int test, double goodProbability, double minutes) {}

    /** Terms of arithmetic for one answer; what more would gain is in DEVELOPERS.md. */
    static final long WORK = 500_000;

    /** A test is passed over when its likelier answer leaves less doubt than this share of what the confidence leaves. */
    private static final double DOUBT = 0.005;

    private static final int FURTHEST = 12;
    /** Few, so that the horizon is far: a wide look at a near one was worse from 8 points on, and no better below. */
    private static final int WIDTH = 4;
    /** Terms of arithmetic that take as long as one look into the memo. */
    private static final int LOOK_UP = 8;
    private static final long GOLDEN = 0x9E3779B97F4A7C15L;

    private final int tests;
    private final double confidence;
    private final double leastDoubt;
    private final double[] minutes;
    private final double[] dearMinutes;
    private final double[][] likelihoods; // of test k: good up to it, good behind it, bad up to it, bad behind it
    private final long[][] keys; // of test k: good, bad; a row of readings has the sum as its key, in any order
    private final double[][] ahead; // the groups' probabilities so many injections ahead
    private final Intervals intervals;
    private final double[] merged;
    private final Memo memo = new Memo();
    private final boolean[][] candidatesAhead;
    private final double[] promise;
    private long updates;
    private long lookUps;
    private long stepsAtEnd;

    Lookahead(Route route) {
        tests = route.tests();
        confidence = route.confidence();
        leastDoubt = DOUBT * (1 - confidence);
        minutes = new double[tests];
        dearMinutes = new double[tests];
        likelihoods = new double[tests][];
        keys = new long[tests][];
        for (int k = 0; k < tests; k++) {
            Access access = route.access(k);
            minutes[k] = access.minutes();
            dearMinutes[k] = access.minutes() / capacity((access.wronglyBad() + access.wronglyGood()) / 2);
            likelihoods[k] = new double[] {access.likelihoodUpTo(true), access.likelihoodBehind(true),
                    access.likelihoodUpTo(false), access.likelihoodBehind(false)};
            long good = mix(2 * k + 1);
            // with equal rates a good reading takes back a bad one
            keys[k] = new long[] {good, access.wronglyBad() == access.wronglyGood() ? -good : mix(2 * k + 2)};
        }
        ahead = new double[FURTHEST + 1][tests + 1];
        intervals = new Intervals(tests + 1, confidence);
        merged = new double[tests + 1];
        candidatesAhead = new boolean[FURTHEST + 1][tests];
        promise = new double[tests];
    }

    /** Bits that a reading tells at most, when it is wrong at this rate either way. */
    private static double capacity(double rate) {
        return rate == 0 ? 1 : 1 + (rate * StrictMath.log(rate) + (1 - rate) * StrictMath.log(1 - rate)) / StrictMath.log(2);
    }

    private static long mix(long index) { // SplitMix64
        long z = index * GOLDEN;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    /**
     * The most promising tests in their order, as far ahead as the work allows.
     *
     * @param groups probabilities, none as likely as the confidence yet
     */
    List<Option> options(double[] groups, long work) {
        System.arraycopy(groups, 0, ahead[0], 0, groups.length);
        long end = steps() + work;
        List<Option> options = options(1, Long.MAX_VALUE);
        for (int horizon = 2; horizon <= FURTHEST && steps() < end; horizon++) {
            List<Option> further = options(horizon, end);
            options = steps() < end ? further : options;
        }
        return options;
    }

    /** Terms of arithmetic since this was made; to look something up counts as {@value #LOOK_UP}. */
    long steps() {
        return updates * (tests + 1) + lookUps * LOOK_UP + intervals.steps();
    }

    private List<Option> options(int horizon, long end) {
        stepsAtEnd = end;
        memo.clear();
        List<Option> options = new ArrayList<>();
        boolean[] candidates = candidates(0);
        double upTo = 0;
        for (int k = 0; k < tests; k++) {
            upTo += ahead[0][k];
            if (candidates[k]) {
                double[] like = likelihoods[k];
                options.add(new Option(k, like[0] * upTo + like[1] * (1 - upTo), with(k, upTo, 0, horizon, 0)));
            }
        }
        return options;
    }

    /** The tests in doubt; of more than {@link #WIDTH} those that would be best if readings were never wrong from there on. */
    private boolean[] candidates(int depth) {
        boolean[] candidates = candidatesAhead[depth];
        double upTo = 0;
        int count = 0;
        for (int k = 0; k < tests; k++) {
            upTo += ahead[depth][k];
            candidates[k] = inDoubt(upTo);
            count += candidates[k] ? 1 : 0;
        }
        if (count > WIDTH) {
            int first = estimate(ahead[depth]);
            for (int k = 0; k < count; k++) {
                promise[k] = intervals.with(k, dearMinutes, first);
            }
            double[] sorted = Arrays.copyOf(promise, count);
            Arrays.sort(sorted);
            for (int k = 0; k < count; k++) {
                candidates[first + k] = promise[k] <= sorted[WIDTH - 1];
            }
        }
        return candidates;
    }

    private boolean inDoubt(double upTo) {
        return Math.min(upTo, 1 - upTo) > leastDoubt;
    }

    private double with(int k, double upTo, int depth, int left, long key) {
        double[] like = likelihoods[k];
        double good = like[0] * upTo + like[1] * (1 - upTo);
        return minutes[k]
                + good * after(k, like[0] / good, like[1] / good, depth, left, key + keys[k][0])
                + (1 - good) * after(k, like[2] / (1 - good), like[3] / (1 - good), depth, left, key + keys[k][1]);
    }

    /** V after a reading of test k, with that many injections left to the horizon before it. */
    private double after(int k, double upToFactor, double behindFactor, int depth, int left, long key) {
        long place = key + left * GOLDEN;
        lookUps++;
        double known = memo.get(place);
        if (!Double.isNaN(known)) {
            return known;
        }
        if (steps() >= stepsAtEnd) {
            return 0; // this horizon is given up
        }
        double[] from = ahead[depth];
        double[] to = ahead[depth + 1];
        double most = 0;
        for (int group = 0; group <= tests; group++) {
            to[group] = from[group] * (group <= k ? upToFactor : behindFactor);
            most = Math.max(most, to[group]);
        }
        updates++;
        double value = 0;
        if (most < confidence && left == 1) {
            estimate(to);
            value = intervals.minutes();
        } else if (most < confidence) {
            value = least(depth + 1, left - 1, key);
        }
        memo.put(place, value);
        return value;
    }

    private double least(int depth, int left, long key) {
        boolean[] candidates = candidates(depth);
        double best = Double.POSITIVE_INFINITY;
        double upTo = 0;
        for (int k = 0; k < tests; k++) {
            upTo += ahead[depth][k];
            if (candidates[k]) {
                best = Math.min(best, with(k, upTo, depth, left, key));
            }
        }
        return best;
    }

    /**
     * Solves the intervals for these groups; what lies before the first test in doubt, and what lies behind the last, counts as
     * one group.
     *
     * @return the first test in doubt
     */
    private int estimate(double[] groups) {
        int first = 0;
        double before = groups[0];
        while (!inDoubt(before)) {
            before += groups[++first];
        }
        int n = 0;
        merged[n++] = before;
        double upTo = before;
        int k = first + 1;
        for (; k < tests && inDoubt(upTo + groups[k]); k++) {
            upTo += groups[k];
            merged[n++] = groups[k];
        }
        merged[n++] = Arrays.stream(groups, k, groups.length).sum();
        intervals.solve(merged, n, dearMinutes, first);
        return first;
    }
}
