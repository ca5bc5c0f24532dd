package understudy.rig;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/**
 * A value that is known within a tolerance.
 *
 * @param nominal   in the unit that the name of its place tells
 * @param tolerance as a fraction of the nominal value, 0 to 0.9: 0.01 is 1 % either way
 */
public record Spread(double nominal, double tolerance) {

    private static final Pattern WITH_TOLERANCE = Pattern.compile("(.+?)[\\s,]+(?:[+]/-)?\\s*([\\d.]+\\s*%)");
    private static final Range TOLERANCES = new Range(0, 90, Unit.PERCENT);

    public Spread {
        if (!Double.isFinite(nominal)) {
            throw new Refused("a part is given as " + nominal, "give it a number");
        }
        Bounds.fraction("tolerance", tolerance, 0, 0.9);
    }

    /**
     * A part as it says on its bag, "4k7 1%": its value in the range's base unit, with its tolerance behind it.
     *
     * @param otherwise the tolerance of one that says none
     */
    public static Spread parse(String written, Range range, double otherwise) {
        Matcher matcher = WITH_TOLERANCE.matcher(written.strip());
        boolean says = matcher.matches();
        double tolerance = says ? TOLERANCES.typed(matcher.group(2)) / 100 : otherwise;
        return new Spread(range.typed(says ? matcher.group(1) : written), tolerance);
    }

    /** A value taken as exact. */
    public static Spread exactly(double value) {
        return new Spread(value, 0);
    }

    /** From -1, the lowest value, to 1, the highest. */
    double at(double place) {
        return nominal * (1 + tolerance * place);
    }
}
