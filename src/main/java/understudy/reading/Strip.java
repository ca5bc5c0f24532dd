package understudy.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The least distance, up and down, within which some straight line passes all pairs (Chebyshev's line). */
final class Strip {

    private Strip() {}

    /** 0 for fewer than three pairs, or where all frequencies are one and all numbers are. */
    static double halfHeight(List<Pair> pairs) {
        List<Pair> sorted = pairs.stream()
                .sorted(Comparator.comparingDouble(Pair::frequencyHz).thenComparingDouble(Pair::shown)).toList();
        // one side of the narrowest strip lies along an edge of the convex hull
        double least = Double.POSITIVE_INFINITY;
        for (int side : new int[] {1, -1}) {
            List<Pair> chain = chain(sorted, side);
            for (int i = 1; i < chain.size(); i++) {
                double rise = chain.get(i).shown() - chain.get(i - 1).shown();
                double run = chain.get(i).frequencyHz() - chain.get(i - 1).frequencyHz();
                if (run > 0) {
                    least = Math.min(least, halfHeight(sorted, rise / run));
                }
            }
        }
        return least == Double.POSITIVE_INFINITY ? halfHeight(sorted, 0) : least;
    }

    private static double halfHeight(List<Pair> pairs, double perHz) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Pair pair : pairs) {
            double level = pair.shown() - perHz * pair.frequencyHz();
            low = Math.min(low, level);
            high = Math.max(high, level);
        }
        return (high - low) / 2;
    }

    /** The upper (1) or lower (-1) side of the convex hull (Andrew's monotone chain). */
    private static List<Pair> chain(List<Pair> sorted, int side) {
        List<Pair> chain = new ArrayList<>();
        for (Pair pair : sorted) {
            while (chain.size() >= 2 && side * turn(chain.get(chain.size() - 2), chain.get(chain.size() - 1), pair) >= 0) {
                chain.remove(chain.size() - 1);
            }
            chain.add(pair);
        }
        return chain;
    }

    private static double turn(Pair a, Pair b, Pair c) {
        return (b.frequencyHz() - a.frequencyHz()) * (c.shown() - a.shown())
                - (b.shown() - a.shown()) * (c.frequencyHz() - a.frequencyHz());
    }
}
