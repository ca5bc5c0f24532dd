package understudy.motion;

import java.util.List;
import understudy.pattern.Profile;

/** Walks the steps of a profile in the order they are played, loops included, without allocating. */
final class ProfileProgram {
    /** Deepest nesting of loops; the pattern reader allows no more. */
    static final int MAX_DEPTH = 8;

    private final List<?>[] lists = new List<?>[MAX_DEPTH];
    private final int[] nextIndex = new int[MAX_DEPTH];
    private final int[] roundsLeft = new int[MAX_DEPTH];
    private int depth;

    ProfileProgram(Profile profile) {
        lists[0] = profile.steps();
        roundsLeft[0] = 1;
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
