package understudy.trace;

import java.util.HashMap;
import java.util.Map;

/** A way to choose where to inject next, from what is believed of the groups; the belief is not settled yet. */
interface Policy {

    /** The cut to inject at. */
    int choose(double[] belief, long key);

    /** The planner's, each belief thought through once. */
    static Policy planned(Task task) {
        Planner planner = new Planner(task);
        Map<Long, Integer> chosen = new HashMap<>();
        return (belief, key) -> chosen.computeIfAbsent(key, whatever -> planner.choose(belief).cut());
    }

    /** From the sensor connector on towards the module, past what is settled; and over again what is not. */
    static Policy endToEnd(Task task) {
        return (belief, key) -> {
            double before = 0;
            int best = 0;
            double mostOpen = -1;
            for (int cut = 0; cut < task.cuts(); cut++) {
                before += belief[cut];
                double open = Math.min(before, 1 - before);
                if (open > 1 - task.confidence()) {
                    return cut;
                }
                if (open > mostOpen) {
                    mostOpen = open;
                    best = cut;
                }
            }
            return best;
        };
    }

    /** Where the suspects that are left, by their number, fall into halves. */
    static Policy halving(Task task) {
        return (belief, key) -> {
            boolean[] left = left(belief, task.confidence());
            int all = 0;
            for (boolean one : left) {
                all += one ? 1 : 0;
            }
            int best = 0;
            int leastOff = Integer.MAX_VALUE;
            int before = 0;
            for (int cut = 0; cut < task.cuts(); cut++) {
                before += left[cut] ? 1 : 0;
                int off = Math.abs(2 * before - all);
                if (off < leastOff || off == leastOff && task.minutes()[cut] < task.minutes()[best]) {
                    leastOff = off;
                    best = cut;
                }
            }
            return best;
        };
    }

    /** The likeliest groups that together reach the confidence: the others are as good as excluded. */
    private static boolean[] left(double[] belief, double confidence) {
        boolean[] left = new boolean[belief.length];
        double sum = 0;
        while (sum < confidence) {
            int most = -1;
            for (int group = 0; group < belief.length; group++) {
                if (!left[group] && (most < 0 || belief[group] > belief[most])) {
                    most = group;
                }
            }
            if (most < 0) {
                break;
            }
            left[most] = true;
            sum += belief[most];
        }
        return left;
    }
}
