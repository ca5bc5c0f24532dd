package understudy.quantity;

import java.util.Locale;

/** Measured numbers in words; one that could not be told is "-". */
public final class NumberText {

    /** Below what any instrument here resolves, and what a quantity can hold. */
    private static final double NOTHING = 1e-15;

    private NumberText() {}

    /** Four digits with the unit. */
    public static String of(double value, Unit unit) {
        return of(value, unit, 4);
    }

    /** So many digits with the unit. */
    public static String of(double value, Unit unit, int digits) {
        if (Double.isNaN(value)) {
            return "-";
        }
        return new Quantity(Math.abs(value) < NOTHING ? 0 : value, unit).rounded(digits);
    }

    /** A part of 1 in per cent, three digits: "7.14 %". */
    public static String percent(double part) {
        return of(100 * part, Unit.PERCENT, 3);
    }

    /** One decimal: "12.3 dB". */
    public static String decibels(double decibels) {
        return !Double.isFinite(decibels) ? "-" : String.format(Locale.ROOT, "%.1f dB", decibels);
    }

    /** With its sign and so many decimals; what rounds to nothing has no sign. */
    public static String signed(double value, int decimals) {
        String said = String.format(Locale.ROOT, "%+." + decimals + "f", value);
        return said.matches("[-+]0\\.?0*") ? said.substring(1) : said;
    }
}
