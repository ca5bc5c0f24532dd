package understudy.sweep;

import java.util.List;
import understudy.pattern.Profile;

/**
 * One stop of a sweep, at which the display is read.
 *
 * @param speedHz      turns a second of the pattern's speed
 * @param way          how it is reached: ramps and sweeps; a start of NaN is wherever the speed is
 * @param dwellSeconds how long it stands there before the display is asked for
 */
public record SweepStop(double speedHz, List<Profile.Step> way, double dwellSeconds) {

    public SweepStop {
        way = List.copyOf(way);
    }

    /** Where its way begins when nothing plays yet: at its first step's start, or at once where that leads. */
    public double startHz() {
        Profile.Step first = way.get(0);
        double fromHz = first instanceof Profile.Sweep sweep ? sweep.fromHz() : ((Profile.Ramp) first).fromHz();
        return !Double.isNaN(fromHz) ? fromHz : first instanceof Profile.Sweep sweep ? sweep.toHz() : ((Profile.Ramp) first).toHz();
    }
}
