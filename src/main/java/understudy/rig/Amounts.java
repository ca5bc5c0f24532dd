package understudy.rig;

import understudy.quantity.NumberText;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;

/** Numbers of circuits as people read them. */
public final class Amounts {

    private Amounts() {}

    /** Three digits and the unit; "open" for an infinite one. */
    public static String print(double value, Unit unit) {
        // what is smaller than a digit of anything here is rounding, and no amount
        return Double.isInfinite(value) ? "open" : new Quantity(Math.abs(value) < 1e-13 ? 0 : value, unit).rounded(3);
    }

    /** With its tolerance, if it has one: "4.7 kohm 5 %". */
    public static String print(Spread spread, Unit unit) {
        return print(spread.nominal(), unit)
                + (spread.tolerance() == 0 ? "" : " " + new Quantity(spread.tolerance() * 100, Unit.PERCENT).rounded(2));
    }

    /** "1.414 V peak, 1 V rms". */
    public static String peakAndRms(Spread volts) {
        return NumberText.of(volts.nominal(), Unit.VOLT) + " peak, " + NumberText.of(volts.nominal() / Math.sqrt(2), Unit.VOLT) + " rms";
    }

    /** The tolerance alone: "5 %". */
    public static String tolerance(Spread spread) {
        return NumberText.of(100 * spread.tolerance(), Unit.PERCENT, 2);
    }
}
