package understudy.reading;

import java.util.Optional;
import java.util.OptionalDouble;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;

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

    /** The point at which the display shows what was typed; empty, and said why, where there is none. */
    public Optional<Point> showing(String typed, Reading reading, Refusals given) {
        Displayed number = Displayed.parse(typed, reading.unit());
        if (number instanceof Displayed.Refused refused) {
            given.add(Control.SHOWN, refused.wrong(), refused.right());
            return Optional.empty();
        }
        double value = number instanceof Displayed.Value plain ? plain.shown() : ((Displayed.Asked) number).shown();
        OptionalDouble hz = reading.frequencyHz(value);
        if (hz.isEmpty()) {
            given.add(Control.SHOWN, reading.unit().exactly(value) + " is shown at no frequency",
                    Remedy.of("look at the ends of the scale of ").set(Control.READING));
            return Optional.empty();
        }
        Optional<Point> point = giving(hz.getAsDouble());
        if (point.isEmpty()) {
            given.add(Control.SHOWN, "it takes " + new Quantity(hz.getAsDouble(), Unit.HERTZ).rounded(4)
                    + ", and the pattern's frequency does not follow its speed", "leave the pattern away");
        }
        pattern.map(Pattern::speed).ifPresent(range -> point.flatMap(one -> one.speedHz().stream().boxed().findFirst())
                .filter(needed -> needed < range.fromHz() || needed > range.toHz())
                .ifPresent(needed -> given.add(Control.SHOWN, "it takes " + range.print(needed) + ", out of this pattern's range",
                        "allowed are " + range.print(range.fromHz()) + " to " + range.print(range.toHz()))));
        return point;
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
