package understudy.rig;

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

    public Use {
        Bounds.fraction("level", level, 1e-6, 1);
        Bounds.fraction("least duty", leastDuty, 0.01, 0.99);
        Bounds.fraction("most duty", mostDuty, leastDuty, 0.99);
    }
}
