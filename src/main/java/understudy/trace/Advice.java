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
        Task task = Task.of(circuit);
        Planner.Choice choice = new Planner(task).choose(Task.belief(circuit, odds));
        if (choice.cut() < 0) {
            return Optional.empty();
        }
        int point = task.points()[choice.cut()];
        return Optional.of(new Advice(point, task.minutes()[choice.cut()], choice.minutes(), reason(circuit, odds, point)));
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
