package understudy.rig;

import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refusals;

/**
 * What is played, as far as the rig's levels depend on it: a signal between two levels.
 *
 * @param level     peak, as a part of full scale, above 0, at most 1
 * @param leastDuty least part of the time that the signal is high, 0.01 to 0.99
 * @param mostDuty  most part of the time that it is high
 */
public record Use(double level, double leastDuty, double mostDuty) {
    /** Full scale, high and low for the same time: a sine, a reluctor, a tooth like its gap. */
    public static final Use FULL = new Use(1, 0.5, 0.5);

    private static final Range DUTY = new Range(1, 99, Unit.PERCENT);

    public Use {
        Bounds.fraction("level", level, 1e-6, 1);
        Bounds.fraction("least duty", leastDuty, 0.01, 0.99);
        Bounds.fraction("most duty", mostDuty, leastDuty, 0.99);
    }

    /** At full scale with a duty like "10 %" or "10 % to 50 %"; said why where it is wrong, and then {@link #FULL}. */
    public static Use read(Location location, String duty, Refusals given) {
        String[] ends = duty.strip().split("\\s+to\\s+", 2);
        double least = given.attempt(location, () -> DUTY.typed(ends[0])).orElse(50.0) / 100;
        double most = ends.length < 2 ? least : given.attempt(location, () -> DUTY.typed(ends[1])).orElse(50.0) / 100;
        if (most < least) {
            given.add(new Refusal(location, "\"" + duty + "\" runs downwards", "write the smaller part first, like \"10 % to 50 %\""));
            return FULL;
        }
        return new Use(1, least, most);
    }
}
