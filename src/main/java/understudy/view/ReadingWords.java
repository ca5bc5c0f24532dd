package understudy.view;

import java.math.MathContext;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.reading.Reading;
import understudy.reading.Scale;
import understudy.reading.Tolerance;
import understudy.text.Json;

/** A declared reading in words, and for scripts. */
public final class ReadingWords {

    private ReadingWords() {}

    /** "wheel speed in km/h: 44 teeth, 1.927 m a turn; within 3 %, in steps of 1 km/h". */
    public static String of(Reading reading) {
        boolean learned = reading.kind() == Reading.Kind.LEARNED;
        return (learned ? "a learned scale" : reading.kind() == Reading.Kind.TABLE ? "a table" : reading.kind().words())
                + " in " + reading.unit().symbol() + scale(reading) + "; within " + tolerance(reading) + ", in steps of "
                + reading.unit().exactly(reading.step());
    }

    private static String scale(Reading reading) {
        Scale scale = reading.scale();
        if (scale instanceof Scale.Rolling rolling) {
            return ": " + number(rolling.teeth()) + " teeth, "
                    + (rolling.axleRatio() == 1 ? "" : "axle ratio " + number(rolling.axleRatio()) + ", ")
                    + new Quantity(rolling.rollsMetres(), Unit.METRE).rounded(4) + " a turn";
        }
        if (scale instanceof Scale.PulsesPerKm perKm) {
            return ": " + number(perKm.pulses()) + " pulses a km";
        }
        if (scale instanceof Scale.EventsPerTurn perTurn) {
            return ": " + number(perTurn.events()) + " events a turn";
        }
        if (scale instanceof Scale.Points table) {
            return " of " + table.points().size() + " points";
        }
        Scale.Line line = (Scale.Line) scale;
        return reading.kind() == Reading.Kind.FREQUENCY ? "" : ": "
                + reading.unit().rounded(reading.unit().fromBase(line.basePerHz()), 5) + " for each Hz, "
                + reading.unit().rounded(reading.unit().fromBase(line.offsetBase()), 4) + " at 0 Hz";
    }

    private static String tolerance(Reading reading) {
        Tolerance tolerance = reading.tolerance();
        String percent = new Quantity(tolerance.percent(), Unit.PERCENT).rounded(3);
        String shown = reading.unit().rounded(tolerance.shown(), 3);
        return tolerance.shown() == 0 ? percent : tolerance.percent() == 0 ? shown : percent + " and " + shown;
    }

    private static String number(double value) {
        return Json.number(value).round(new MathContext(6)).toPlainString();
    }

    private record Declared(String shows, String unit, double step, String text) {}

    /** For scripts. */
    public static Object json(Reading reading) {
        return new Declared(reading.kind().words(), reading.unit().symbol(), reading.step(), reading.text());
    }
}
