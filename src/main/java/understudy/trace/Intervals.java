package understudy.trace;

/**
 * The best plan where readings are never wrong. All that can be known then is an interval of groups, and
 * <pre>
 *   W(a, b) = 0, if one group of a..b is likely enough; else the least over tests k of  P(a, b) c(k) + W(a, k) + W(k + 1, b)
 * </pre>
 * with P(a, b) the probability of the interval, c(k) the minutes of test k, and W(a, b) the minutes still to come, weighted
 * with P(a, b). It is the optimal alternating search tree (D. E. Knuth, "Optimum binary search trees", Acta Informatica 1,
 * 1971) with a cost for each node. All roots are tried: with unequal costs Knuth's shortcut doesn't hold.
 *
 * <p>Allocates once, to be solved often; not for several threads.
 */
final class Intervals {

    private final int size;
    private final double confidence;
    private final double[] weighted;
    private int groups;
    private double whole;
    private long steps;

    /** @param size most groups that will be asked for */
    Intervals(int size, double confidence) {
        this.size = size;
        this.confidence = confidence;
        this.weighted = new double[size * size];
    }

    /**
     * @param weights of the groups, 0 or more; the first n of them count
     * @param minutes of the tests between them; those from offset on count
     */
    void solve(double[] weights, int n, double[] minutes, int offset) {
        groups = n;
        for (int a = n - 1; a >= 0; a--) {
            double sum = weights[a];
            double most = weights[a];
            weighted[a * size + a] = 0;
            for (int b = a + 1; b < n; b++) {
                sum += weights[b];
                most = Math.max(most, weights[b]);
                weighted[a * size + b] = most >= confidence * sum ? 0 : least(a, b, sum, minutes, offset);
            }
            whole = sum;
        }
    }

    /** Still to come with the best plan, weighted with the groups' total. */
    double minutes() {
        return weighted[groups - 1];
    }

    private double least(int a, int b, double sum, double[] minutes, int offset) {
        double best = Double.POSITIVE_INFINITY;
        int column = (a + 1) * size + b;
        for (int k = a; k < b; k++) {
            best = Math.min(best, sum * minutes[offset + k] + weighted[a * size + k] + weighted[column]);
            column += size;
        }
        steps += b - a;
        return best;
    }

    /** Still to come with this test first; the test is counted from the offset, as when solved. */
    double with(int test, double[] minutes, int offset) {
        return whole * minutes[offset + test] + weighted[test] + weighted[(test + 1) * size + groups - 1];
    }

    /** Terms looked at since this was made: the measure of its work. */
    long steps() {
        return steps;
    }
}
