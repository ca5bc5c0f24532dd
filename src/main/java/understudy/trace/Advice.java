package understudy.trace;

import java.util.Locale;
import java.util.Optional;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;

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
        return new Planner(circuit.route()).choose(odds)
                .map(choice -> new Advice(choice.point(), choice.reachMinutes(), choice.minutes(), reason(circuit, odds, choice)));
    }

    private static String reason(Circuit circuit, Odds odds, Planner.Choice choice) {
        double sensorSide = 0;
        for (int suspect = 0; suspect <= choice.point(); suspect++) {
            sensorSide += odds.probability(suspect);
        }
        String split = Math.abs(sensorSide - 0.5) <= NEAR_HALF
                ? "It halves the odds"
                : String.format(Locale.ROOT, "It parts the odds %.0f to %.0f", 100 * Math.max(sensorSide, 1 - sensorSide),
                        100 * Math.min(sensorSide, 1 - sensorSide));
        String minutes = split + " and is " + new Quantity(choice.reachMinutes(), Unit.MINUTE).rounded(2) + " away";
        return choice.runnerUp().map(other -> String.format(Locale.ROOT, "%s: %.1f min to the end on average, %s by way of %s.",
                minutes, choice.minutes(), more(other.minutes() - choice.minutes()), circuit.points().get(other.point()).name()))
                .orElse(minutes + ".");
    }

    private static String more(double minutes) {
        return minutes < 0.05 ? "hardly more" : String.format(Locale.ROOT, "%.1f more", minutes);
    }
}
