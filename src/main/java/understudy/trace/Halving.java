package understudy.trace;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Plain halving: the point that parts the suspects not yet excluded into equal numbers, or the nearer to that; of equals the
 * quicker to reach. Not excluded are the likeliest ones that together hold what the confidence asks.
 */
record Halving(Route route) implements Policy {

    @Override
    public int next(Odds odds) {
        double[] groups = route.groups(odds);
        List<Integer> likeliestFirst = IntStream.range(0, groups.length).boxed()
                .sorted(Comparator.comparingDouble((Integer group) -> -groups[group])).toList();
        boolean[] suspected = new boolean[groups.length];
        int count = 0;
        for (double held = 0; held < route.confidence() && count < groups.length && groups[likeliestFirst.get(count)] > 0; count++) {
            suspected[likeliestFirst.get(count)] = true;
            held += groups[likeliestFirst.get(count)];
        }
        return route.point(mostEven(suspected, count));
    }

    private int mostEven(boolean[] suspected, int count) {
        int best = 0;
        int bestUnevenness = Integer.MAX_VALUE;
        int upTo = 0;
        for (int test = 0; test < route.tests(); test++) {
            upTo += suspected[test] ? 1 : 0;
            int unevenness = Math.abs(2 * upTo - count);
            if (unevenness < bestUnevenness
                    || unevenness == bestUnevenness && route.access(test).minutes() < route.access(best).minutes()) {
                best = test;
                bestUnevenness = unevenness;
            }
        }
        return best;
    }
}
