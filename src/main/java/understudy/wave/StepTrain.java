package understudy.wave;

/**
 * A level that changes by smoothed steps at exact instants. Instants are frames since the start of the quantum and
 * move back by a quantum with every {@link #shift}.
 */
final class StepTrain {
    private static final double PER_FRAME = 1 / Gaussian.SIGMA_FRAMES;

    private final double[] atFrame;
    private final double[] change;
    private final double[] levelAfter;
    private int count;
    /** The level that all steps gone by have left. */
    private double level;

    StepTrain(int capacity, double level) {
        atFrame = new double[capacity];
        change = new double[capacity];
        levelAfter = new double[capacity];
        this.level = level;
    }

    boolean full() {
        return count == atFrame.length;
    }

    /** Sets the level from which the first step starts. */
    void begin(double startLevel) {
        level = startLevel;
    }

    /** What the steps of the {@code reach} frames before a frame still lack there of the level they lead to. */
    double missingAt(double frame, double reach) {
        double sum = 0;
        for (int k = count - 1; k >= 0 && frame - atFrame[k] < reach; k--) {
            sum += change[k] * (Gaussian.step((frame - atFrame[k]) * PER_FRAME) - 1);
        }
        return sum;
    }

    double lastLevel() {
        return count == 0 ? level : levelAfter[count - 1];
    }

    /** A step to {@code newLevel}, no earlier than the step before it. */
    void stepTo(double frame, double newLevel) {
        change[count] = newLevel - lastLevel();
        levelAfter[count] = newLevel;
        atFrame[count++] = frame;
    }

    /** Fills {@code out[0 .. frames)} with the level. */
    void render(double[] out, int frames) {
        double now = level;
        int filled = 0;
        for (int k = 0; k < count && filled < frames; k++) {
            int end = endOf(k, frames);
            while (filled < end) {
                out[filled++] = now;
            }
            now = levelAfter[k];
        }
        while (filled < frames) {
            out[filled++] = now;
        }
        for (int k = 0; k < count; k++) {
            StepTable.add(out, frames, atFrame[k], change[k]);
        }
    }

    /** First frame that step k leaves untouched, its level being reached. */
    private int endOf(int k, int frames) {
        return Math.max(0, Math.min(frames, StepTable.endOf(atFrame[k])));
    }

    /** Moves on by {@code frames} and forgets the steps that are over. */
    void shift(int frames) {
        int gone = 0;
        while (gone < count && endOf(gone, frames) < frames) {
            level = levelAfter[gone++];
        }
        count -= gone;
        for (int k = 0; k < count; k++) {
            atFrame[k] = atFrame[k + gone] - frames;
            change[k] = change[k + gone];
            levelAfter[k] = levelAfter[k + gone];
        }
    }
}
