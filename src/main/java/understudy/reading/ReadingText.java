package understudy.reading;

import java.math.BigDecimal;
import java.util.stream.Collectors;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;

/** Writes a reading as its reader reads it. */
final class ReadingText {

    private ReadingText() {}

    static String of(Reading reading) {
        DisplayUnit unit = reading.unit();
        return "{shows: " + reading.kind().words() + ", unit: " + unit.symbol() + scale(reading.scale(), unit, reading.kind())
                + ", tolerance: " + reading.tolerance().text(unit) + ", step: " + unit.exactly(reading.step()) + "}";
    }

    private static String scale(Scale scale, DisplayUnit unit, Reading.Kind kind) {
        if (scale instanceof Scale.Rolling rolling) {
            return ", teeth: " + plain(rolling.teeth())
                    + (kind == Reading.Kind.VEHICLE_SPEED ? ", axle-ratio: " + plain(rolling.axleRatio()) : "")
                    + ", rolls: " + new Quantity(rolling.rollsMetres(), Unit.METRE);
        }
        if (scale instanceof Scale.PulsesPerKm perKm) {
            return ", pulses-per-km: " + plain(perKm.pulses());
        }
        if (scale instanceof Scale.EventsPerTurn perTurn) {
            return ", events: " + plain(perTurn.events());
        }
        if (scale instanceof Scale.Points table) {
            return ", points: {" + table.points().stream()
                    .map(point -> new Quantity(point.frequencyHz(), Unit.HERTZ) + ": " + unit.exactly(unit.fromBase(point.base())))
                    .collect(Collectors.joining(", ")) + "}";
        }
        if (kind == Reading.Kind.FREQUENCY) {
            return "";
        }
        Scale.Line line = (Scale.Line) scale;
        return ", scale: " + unit.exactly(unit.fromBase(line.basePerHz())) + " per Hz, offset: "
                + unit.exactly(unit.fromBase(line.offsetBase()));
    }

    private static String plain(double number) {
        return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
    }
}
