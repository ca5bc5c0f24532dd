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
        this.program = new ProfileProgram(new Profile(steps));
        this.seconds = steps.stream().mapToDouble(Travel::seconds).sum();
    }

    private static double seconds(Profile.Step step) {
        if (step instanceof Profile.Hold hold) {
            return hold.seconds();
        } else if (step instanceof Profile.Ramp ramp) {
            return ramp.seconds();
        } else if (step instanceof Profile.Sweep sweep) {
            return sweep.seconds();
        }
        throw new IllegalArgumentException("no travel has " + step);
    }

    /** How long it takes. */
    public double seconds() {
        return seconds;
    }
}
