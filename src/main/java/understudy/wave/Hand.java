package understudy.wave;

import java.util.Optional;
import understudy.motion.Travel;

/**
 * What the user's hand asks for while a pattern plays: one immutable snapshot, handed to the renderer through one
 * volatile reference. The renderer slews towards it, so that neither angle nor volts jump.
 *
 * @param speedHz  turns per second; NaN leaves the speed to the profile
 * @param level    times the declared volts, 0 to 1
 * @param faultsOn bit i set: fault i of the pattern acts (at most 64 faults)
 * @param travel   the way on which it asks to be taken to that speed, once; without one it is a short ramp
 */
public record Hand(double speedHz, double level, long faultsOn, Optional<Travel> travel) {

    public Hand(double speedHz, double level, long faultsOn) {
        this(speedHz, level, faultsOn, Optional.empty());
    }

    public Hand {
        if (speedHz < 0 || speedHz == Double.POSITIVE_INFINITY || !(level >= 0 && level <= 1)) {
            throw new IllegalArgumentException("speed must be 0 Hz or more and level 0 to 1, got " + speedHz + ", " + level);
        }
    }

    public Hand withSpeedHz(double hz) {
        return new Hand(hz, level, faultsOn);
    }

    /** To a speed on this way, which ends there. */
    public Hand travelling(Travel way, double toHz) {
        return new Hand(toHz, level, faultsOn, Optional.of(way));
    }

    public Hand withLevel(double other) {
        return new Hand(speedHz, other, faultsOn, travel);
    }

    public Hand withFault(int index, boolean on) {
        return new Hand(speedHz, level, on ? faultsOn | 1L << index : faultsOn & ~(1L << index), travel);
    }
}
