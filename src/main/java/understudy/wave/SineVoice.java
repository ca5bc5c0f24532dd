package understudy.wave;

import understudy.motion.Motion;

/** A sine read at the exact angle of each frame. */
final class SineVoice implements Voice {
    private final Motion motion;
    private final Axis axis;
    private final double peakVolts;
    private final double offsetVolts;

    SineVoice(double peakVolts, double offsetVolts, Motion motion, Axis axis) {
        this.peakVolts = peakVolts;
        this.offsetVolts = offsetVolts;
        this.motion = motion;
        this.axis = axis;
    }

    @Override
    public double restVolts() {
        return offsetVolts;
    }

    @Override
    public void render(double[] out, long faultsOn) {
        axis.follow(motion);
        double[] turns = motion.turns();
        for (int i = 0; i < Motion.QUANTUM; i++) {
            out[i] = offsetVolts + peakVolts * Sine.ofTurns(axis.cyclesAt(turns[i]));
        }
    }
}
