package understudy.rig;

/** Whether rigs on one input keep the limits at every corner; where one broke them, the next one is tried first. */
final class CornerCheck {
    private final Input input;
    private final Use use;
    private final CurrentLimits limits;
    private long suspect;

    CornerCheck(Input input, Use use, CurrentLimits limits) {
        this.input = input;
        this.use = use;
        this.limits = limits;
    }

    boolean keeps(Rig rig) {
        long count = WorstCase.count(rig, input);
        for (long i = 0; i < count; i++) {
            long ends = suspect + i & count - 1; // a power of two
            WorstCase.Build build = WorstCase.corner(rig, input, ends);
            if (!new StateStudy(build.rig(), build.input(), use).keeps(limits)) {
                suspect = ends;
                return false;
            }
        }
        return true;
    }
}
