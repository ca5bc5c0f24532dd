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
}
