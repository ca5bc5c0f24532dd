package understudy.reading;

import understudy.quantity.Quantity;
import understudy.quantity.Unit;

/**
 * How far a good module's own value may lie from the computed one, on either side, before its display rounds it.
 *
 * @param percent of the value, 0 or more
 * @param shown   in the display's unit, 0 or more; both add up
 */
public record Tolerance(double percent, double shown) {

    public Tolerance {
        if (!(percent >= 0 && percent < 100 && shown >= 0 && shown < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a tolerance is 0 to below 100 % and 0 or more of the unit");
        }
    }

    double at(double value) {
        return percent / 100 * Math.abs(value) + shown;
    }

    /** "3 %", "2 kPa" or "3 % + 2 kPa". */
    String text(DisplayUnit unit) {
        String part = new Quantity(percent, Unit.PERCENT).toString();
        if (shown == 0) {
            return part;
        }
        return (percent == 0 ? "" : part + " + ") + unit.exactly(shown);
    }
}
