package understudy.rig;

import understudy.quantity.Quantity;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/** What sizes parts, volts and times can have, and the refusal of others. */
final class Bounds {
    static final Range OHMS = new Range(1e-3, 1e9, Unit.OHM);
    static final Range FARADS = new Range(1e-13, 1, Unit.FARAD);
    static final Range HENRIES = new Range(1e-6, 1e4, Unit.HENRY);
    static final Range VOLTS = new Range(-60, 60, Unit.VOLT);
    static final Range SWING_VOLTS = new Range(1e-3, 60, Unit.VOLT);

    private Bounds() {}

    static void check(String what, Spread spread, Range range) {
        check(what, spread.nominal(), range);
    }

    static void check(String what, double value, Range range) {
        if (!(value >= range.from() && value <= range.to())) {
            throw new Refused("the " + what + " is given as " + print(value, range.unit()), range.allowed());
        }
    }

    static void fraction(String what, double value, double from, double to) {
        if (!(value >= from && value <= to)) {
            throw new Refused("the " + what + " is given as " + value, "allowed are " + from + " to " + to);
        }
    }

    /** Three digits and the unit; what is no number is said as it is. */
    static String print(double value, Unit unit) {
        double size = Math.abs(value);
        boolean printable = value == 0 || size >= 1e-15 && size <= 1e15;
        return printable ? new Quantity(value, unit).rounded(3) : value + " " + unit.symbol();
    }
}
