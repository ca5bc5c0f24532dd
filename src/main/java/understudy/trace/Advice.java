package understudy.trace;

import java.util.Locale;
import java.util.Optional;

/**
 * Where to inject next.
 *
 * @param point           index into the circuit's points
 * @param minutes         that this injection takes
 * @param minutesExpected that are still to come on average, this one included
 * @param reason          one sentence
 */
public record Advice(int point, double minutes, double minutesExpected, String reason) {

    /** A split no more uneven than this is a half. */
    private static final double NEAR_HALF = 0.1;

    /** Empty when no injection can tell anything more. */
    public static Optional<Advice> next(Circuit circuit, Odds odds) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int point = 0; point < circuit.points().size(); point++) {
            if (!circuit.points().get(point).injectable()) {
                continue;
            }
            double good = odds.probability(0, point) * (1 - circuit.wronglyBad())
                    + (1 - odds.probability(0, point)) * circuit.wronglyGood();
            double minutes = circuit.points().get(point).reachMinutes();
            if (good > 0) {
                minutes += good * toCome(circuit, odds.after(point, 1 - circuit.wronglyBad(), circuit.wronglyGood()));
            }
            if (good < 1) {
                minutes += (1 - good) * toCome(circuit, odds.after(point, circuit.wronglyBad(), 1 - circuit.wronglyGood()));
            }
            if (minutes < least) {
                least = minutes;
                best = point;
            }
        }
        if (best < 0) {
            return Optional.empty();
        }
        return Optional.of(new Advice(best, circuit.points().get(best).reachMinutes(), least, reason(circuit, odds, best)));
    }

    private static double toCome(Circuit circuit, Odds odds) {
        int n = circuit.points().size();
        double[][] cost = new double[n + 1][n + 1];
        for (int from = n; from >= 0; from--) {
            for (int to = from + 1; to <= n; to++) {
                double best = Double.POSITIVE_INFINITY;
                for (int point = from; point < to; point++) {
                    if (circuit.points().get(point).injectable()) {
                        best = Math.min(best, odds.probability(from, to) * circuit.points().get(point).reachMinutes()
                                + cost[from][point] + cost[point + 1][to]);
                    }
                }
                cost[from][to] = best == Double.POSITIVE_INFINITY ? 0 : best;
            }
        }
        return cost[0][n];
    }

    private static String reason(Circuit circuit, Odds odds, int point) {
        double sensorSide = odds.probability(0, point);
        String split = Math.abs(sensorSide - 0.5) <= NEAR_HALF
                ? "halves the odds"
                : String.format(Locale.ROOT, "parts the odds %.0f to %.0f", 100 * Math.max(sensorSide, 1 - sensorSide),
                        100 * Math.min(sensorSide, 1 - sensorSide));
        return String.format(Locale.ROOT, "It %s and takes %.3g min.", split, circuit.points().get(point).reachMinutes());
    }
}
