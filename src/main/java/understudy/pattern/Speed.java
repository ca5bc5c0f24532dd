package understudy.pattern;

import java.util.List;
import understudy.quantity.Dimension;
import understudy.quantity.Quantity;
import understudy.quantity.TypedQuantity;
import understudy.refusal.Refused;

/**
 * The speed that drives a pattern. Inside the house a speed is turns per second (Hz); the unit is for people.
 *
 * @param unit          the unit that the file speaks
 * @param metresPerTurn road travelled in one turn (rolling circumference); NaN unless the unit is km/h or mph
 * @param defaultHz     turns per second when nothing else is asked for
 * @param fromHz        lowest allowed, turns per second, 0 or more
 * @param toHz          highest allowed, turns per second
 */
public record Speed(SpeedUnit unit, double metresPerTurn, double defaultHz, double fromHz, double toHz) {

    public Speed {
        if (!(fromHz >= 0 && fromHz <= defaultHz && defaultHz <= toHz && toHz > 0 && toHz < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "speeds must be 0 <= from <= default <= to, got " + fromHz + ", " + defaultHz + ", " + toHz + " Hz");
        }
        if (unit.needsCircumference() && !(metresPerTurn > 0)) {
            throw new IllegalArgumentException("a speed in " + unit.symbol() + " needs the metres rolled in one turn");
        }
    }

    /** Turns per second of a speed in {@link #unit()}. */
    public double hz(double inUnit) {
        return unit.toHz(inUnit, metresPerTurn);
    }

    /** A speed in {@link #unit()} from turns per second. */
    public double inUnit(double hz) {
        return unit.fromHz(hz, metresPerTurn);
    }

    /**
     * Turns per second of a speed that a person wrote ("800 rpm", "120 Hz", "45 km/h"), within the allowed range.
     *
     * @throws Refused saying what is wrong and which speeds are allowed
     */
    public double parseHz(String written) {
        double hz = parseAnyHz(written);
        if (!(hz >= fromHz && hz <= toHz)) {
            throw new Refused("the speed " + written.strip() + " is out of this pattern's range",
                    "allowed are " + print(fromHz) + " to " + print(toHz));
        }
        return hz;
    }

    /** The same as a person types it: a number alone is in {@link #unit()}, see {@link TypedQuantity}. */
    public double typedHz(String written) {
        return parseHz(TypedQuantity.plain(written, unit.unit(), List.of(Dimension.ROAD_SPEED, Dimension.TURNING, Dimension.FREQUENCY)));
    }

    /** The same without a look at the range. */
    double parseAnyHz(String written) {
        Quantity quantity = SpeedUnit.parse(written, unit.needsCircumference());
        return SpeedUnit.of(quantity).toHz(quantity.value(), metresPerTurn);
    }

    /** Turns per second, printed in {@link #unit()} with four digits: "800 rpm". */
    public String print(double hz) {
        return new Quantity(inUnit(hz), unit.unit()).rounded(4);
    }
}
