package understudy.reading;

import java.util.Optional;
import java.util.OptionalDouble;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;

/** What is injected: a pattern's output at its speed, or bare events a second. */
public record Injected(Optional<Pattern> pattern, Optional<Output> output) {

    /**
     * @param speedHz     turns a second of the pattern's speed, where there is a pattern
     * @param frequencyHz events a second
     */
    public record Point(OptionalDouble speedHz, double frequencyHz) {}

    /** Slower than any wheel turns, and too little to be printed. */
    private static final double STANDING_HZ = 1e-12;

    public Point atSpeed(double speedHz) {
        double turnsHz = moving(speedHz);
        return new Point(OptionalDouble.of(turnsHz), SignalFrequency.hz(output.orElseThrow(), turnsHz).orElse(Double.NaN));
    }

    public Point atHz(double frequencyHz) {
        return new Point(OptionalDouble.empty(), moving(frequencyHz));
    }

    private static double moving(double hz) {
        return hz < STANDING_HZ ? 0 : hz;
    }

    /** The point that gives so many events a second; empty where no speed does. */
    public Optional<Point> giving(double frequencyHz) {
        if (pattern.isEmpty()) {
            return Optional.of(atHz(frequencyHz));
        }
        double perTurn = atSpeed(1).frequencyHz();
        boolean follows = atSpeed(2).frequencyHz() != perTurn;
        return follows ? Optional.of(atSpeed(frequencyHz / perTurn)) : Optional.empty();
    }

    /** "50 km/h" or "692 Hz". */
    public String words(Point point) {
        return point.speedHz().isPresent()
                ? pattern.orElseThrow().speed().print(point.speedHz().getAsDouble()) : hertz(point);
    }

    public static String hertz(Point point) {
        return new Quantity(point.frequencyHz(), Unit.HERTZ).rounded(4);
    }
}
