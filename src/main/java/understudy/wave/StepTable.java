package understudy.wave;

/**
 * The smoothed step at the frames around it, for every place between two frames, read off ready-made rows.
 *
 * <p>A row holds the step's {@value #TAPS} frames for one place; between rows it is linear, which leaves h^2/8 times
 * the curvature: (1 / {@value #ROWS} / 1.5)^2 / 8 * 0.25 = 8e-10, a hundredth of a 24-bit step.
 */
final class StepTable {
    /** Frames that a step takes, from 9 before to 9 after. */
    static final int TAPS = 2 * (int) Gaussian.REACH_FRAMES;

    private static final int ROWS = 4096;
    private static final int BEFORE = (int) Gaussian.REACH_FRAMES;
    private static final double[] TABLE = new double[(ROWS + 1) * TAPS];

    static {
        for (int row = 0; row <= ROWS; row++) {
            // row r is for an instant r / ROWS after a frame; tap BEFORE - 1 is that frame
            double instant = (double) row / ROWS;
            for (int tap = 0; tap < TAPS; tap++) {
                double away = tap - (BEFORE - 1) - instant;
                TABLE[row * TAPS + tap] = Gaussian.step(away / Gaussian.SIGMA_FRAMES);
            }
        }
    }

    private StepTable() {}

    /** First frame after a step that is left at its final level. */
    static int endOf(double atFrame) {
        // beyond the int range a step is as good as never, or long over
        return atFrame < -TAPS ? -1 : atFrame > 1e6 ? 1_000_000 : (int) Math.floor(atFrame) + BEFORE + 1;
    }

    /** Adds a step of {@code change} at an instant to {@code out[0 .. min(frames, endOf(atFrame)))}. */
    static void add(double[] out, int frames, double atFrame, double change) {
        int end = endOf(atFrame);
        int begin = end - TAPS;
        if (end <= 0 || begin >= frames) {
            return;
        }
        double place = (atFrame - Math.floor(atFrame)) * ROWS;
        int row = (int) place;
        double part = (place - row) * change;
        double whole = change - part;
        int first = Math.max(0, begin);
        int last = Math.min(frames, end);
        int a = row * TAPS - begin;
        int b = a + TAPS;
        for (int n = first; n < last; n++) {
            out[n] += whole * TABLE[a + n] + part * TABLE[b + n];
        }
    }
}
