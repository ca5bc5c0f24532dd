package understudy.motion;

import java.util.List;
import understudy.pattern.Profile;

/**
 * A way from the speed that plays to another, along steps of a profile, for a hand that asks for more than a speed. Made
 * by whoever asks, walked once by the motion that takes it over.
 */
public final class Travel {

    final ProfileProgram program;
    private final double seconds;

    /** @param steps holds, ramps and sweeps; a start of NaN is wherever the speed is then */
    public Travel(List<Profile.Step> steps) {
        if (!steps.stream().allMatch(step -> step instanceof Profile.Hold || step instanceof Profile.Ramp || step instanceof Profile.Sweep)) {
            throw new IllegalArgumentException("a travel holds, ramps and sweeps, not " + steps);
        }
        Profile way = new Profile(steps);
        this.program = new ProfileProgram(way);
        this.seconds = way.seconds();
    }

    /** How long it takes. */
    public double seconds() {
        return seconds;
    }
}
