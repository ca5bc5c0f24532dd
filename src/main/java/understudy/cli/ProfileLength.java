package understudy.cli;

import java.util.List;
import understudy.pattern.Profile;
import understudy.pattern.Profile.Step;

/** How long a profile takes. */
final class ProfileLength {

    private ProfileLength() {}

    /** Seconds until its last step ends; infinite when it repeats for ever. A last "follow" takes no time of its own. */
    static double seconds(List<Step> steps) {
        return steps.stream().mapToDouble(ProfileLength::seconds).sum();
    }

    private static double seconds(Step step) {
        if (step instanceof Profile.Hold hold) {
            return hold.seconds();
        } else if (step instanceof Profile.Ramp ramp) {
            return ramp.seconds();
        } else if (step instanceof Profile.Sweep sweep) {
            return sweep.seconds();
        } else if (step instanceof Profile.Crank crank) {
            return crank.seconds();
        } else if (step instanceof Profile.Repeat repeat) {
            return repeat.times() == Profile.Repeat.FOREVER
                    ? Double.POSITIVE_INFINITY
                    : repeat.times() * seconds(repeat.steps());
        }
        return 0;
    }
}
