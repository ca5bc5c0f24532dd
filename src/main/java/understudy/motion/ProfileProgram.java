package understudy.motion;

import java.util.List;
import understudy.pattern.Profile;

/** Walks the steps of a profile in the order they are played, loops included, without allocating. */
final class ProfileProgram {
    private final List<?>[] lists;
    private final int[] nextIndex;
    private final int[] roundsLeft;
    private int depth;

    ProfileProgram(Profile profile) {
        int levels = levels(profile.steps());
        lists = new List<?>[levels];
        nextIndex = new int[levels];
        roundsLeft = new int[levels];
        lists[0] = profile.steps();
        roundsLeft[0] = 1;
    }

    private static int levels(List<Profile.Step> steps) {
        int deepest = 0;
        for (Profile.Step step : steps) {
            if (step instanceof Profile.Repeat repeat) {
                deepest = Math.max(deepest, levels(repeat.steps()));
            }
        }
        return 1 + deepest;
    }

    /** The next hold, ramp, sweep, crank or follow; null when the profile is over. */
    Profile.Step next() {
        while (true) {
            if (nextIndex[depth] < lists[depth].size()) {
                Profile.Step step = (Profile.Step) lists[depth].get(nextIndex[depth]++);
                if (!(step instanceof Profile.Repeat repeat)) {
                    return step;
                }
                depth++;
                lists[depth] = repeat.steps();
                nextIndex[depth] = 0;
                roundsLeft[depth] = repeat.times();
            } else if (roundsLeft[depth] == Profile.Repeat.FOREVER) {
                nextIndex[depth] = 0;
            } else if (roundsLeft[depth] > 1) {
                roundsLeft[depth]--;
                nextIndex[depth] = 0;
            } else if (depth == 0) {
                return null;
            } else {
                depth--;
            }
        }
    }
}
