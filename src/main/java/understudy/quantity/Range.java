package understudy.quantity;

import java.util.List;
import understudy.refusal.Refused;

/**
 * The values that are allowed, both ends included, in one unit.
 *
 * @param from lowest
 * @param to   highest
 * @param unit of both
 */
public record Range(double from, double to, Unit unit) {

    public Range {
        if (!(from <= to)) {
            throw new IllegalArgumentException("a range runs upwards, got " + from + " to " + to);
        }
    }

    /** Reads a quantity within this range, in its base unit; says what is wrong and what is allowed. */
    public double parse(String written) {
        Quantity quantity = Quantity.parse(written, unit.dimension());
        double base = quantity.base();
        if (base < baseOf(from) || base > baseOf(to)) {
            throw new Refused(quantity + " is out of range", allowed());
        }
        return base;
    }

    /** The same as a person types it: a number alone is in this range's unit, see {@link TypedQuantity}. */
    public double typed(String written) {
        return parse(TypedQuantity.plain(written, unit, List.of(unit.dimension())));
    }

    /** "allowed are 1 mV to 100 V". */
    public String allowed() {
        return "allowed are " + new Quantity(from, unit) + " to " + new Quantity(to, unit);
    }

    private double baseOf(double value) {
        return new Quantity(value, unit).base();
    }
}
