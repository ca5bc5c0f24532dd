package understudy.trace;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What a policy will take, worked out over all readings that can come.
 *
 * @param minutes expected until a group is settled
 * @param right   probability that the group that is convicted is the bad one
 * @param open    probability that nothing is settled after {@value #MOST_INJECTIONS} injections; their further minutes are
 *                not counted
 */
record Forecast(double minutes, double right, double open) {

    static final int MOST_INJECTIONS = 80;
    /** What is rarer than this is left open: it can't move the minutes by what anyone would notice. */
    private static final double RARE = 1e-9;

    /** @param weight probability to come here */
    private record State(double[] belief, double weight) {}

    static Forecast of(Task task, double[] prior, Policy policy) {
        Map<Long, State> now = new LinkedHashMap<>();
        now.put(0L, new State(prior, 1));
        double minutes = 0;
        double right = 0;
        double open = 0;
        for (int injection = 0; injection <= MOST_INJECTIONS && !now.isEmpty(); injection++) {
            Map<Long, State> next = new LinkedHashMap<>();
            for (Map.Entry<Long, State> entry : now.entrySet()) {
                State state = entry.getValue();
                if (task.settled(state.belief())) {
                    right += state.weight() * Arrays.stream(state.belief()).max().orElseThrow();
                } else if (injection == MOST_INJECTIONS || state.weight() < RARE) {
                    open += state.weight();
                } else {
                    int cut = policy.choose(state.belief(), entry.getKey());
                    minutes += state.weight() * task.minutes()[cut];
                    for (boolean good : new boolean[] {true, false}) {
                        double[] after = new double[prior.length];
                        double probability = task.read(state.belief(), cut, good, after);
                        if (probability > 0) {
                            next.merge(task.key(entry.getKey(), cut, good), new State(after, state.weight() * probability),
                                    (a, b) -> new State(a.belief(), a.weight() + b.weight()));
                        }
                    }
                }
            }
            now = next;
        }
        return new Forecast(minutes, right, open);
    }
}
