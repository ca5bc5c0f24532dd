package understudy.cli;

import java.util.List;

/**
 * One stop of a sweep, at which the display is read.
 *
 * @param speedHz      turns a second of the pattern's speed
 * @param legs         the way there
 * @param dwellSeconds how long it stands there before the display is asked for
 */
record SweepStep(double speedHz, List<Leg> legs, double dwellSeconds) {

    SweepStep {
        legs = List.copyOf(legs);
    }

    /**
     * A change of speed.
     *
     * @param fromHz  NaN: from wherever it is; otherwise it jumps there first
     * @param equally whether equal times make equal ratios, instead of equal differences
     */
    record Leg(double fromHz, double toHz, double seconds, boolean equally) {

        /** The speed after so much of the time, 0 to 1, when it started from {@code startHz}. */
        double at(double part, double startHz) {
            double start = Double.isNaN(fromHz) ? startHz : fromHz;
            if (part >= 1) {
                return toHz;
            }
            return equally && start > 0 ? start * Math.pow(toHz / start, part) : start + part * (toHz - start);
        }
    }
}
