package understudy.rig;

import understudy.refusal.Refused;

/**
 * A value that is known within a tolerance.
 *
 * @param nominal   in the unit that the name of its place tells
 * @param tolerance as a fraction of the nominal value, 0 to 0.9: 0.01 is 1 % either way
 */
public record Spread(double nominal, double tolerance) {

    public Spread {
        if (!Double.isFinite(nominal)) {
            throw new Refused("a part is given as " + nominal, "give it a number");
        }
        Bounds.fraction("tolerance", tolerance, 0, 0.9);
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
