package understudy.wave;

import understudy.motion.Motion;
import understudy.pattern.Hall;

/**
 * A two-level signal whose every edge crosses mid level at its exact instant.
 *
 * <p>Edges closer than about six sigma pull on each other, so the instants handed to the kernel are solved: each is
 * moved until the sum of all kernels crosses the middle of its own step where the geometry says. Newton's method, one
 * edge at a time in order (Gauss-Seidel): neighbours at distance d pull with exp(-(d/sigma)^2 / 2), so the sweeps
 * converge by about the square of that. Edges are known one quantum ahead of those that are fixed, far beyond what
 * pulls.
 */
final class EdgeVoice implements Voice {
    /** Edges known ahead; at two frames apart, closer than can be played, a window holds 73. */
    private static final int CAPACITY = 256;
    private static final int MOST_SWEEPS = 40;
    /** 2e-9 frames are 0.04 ps at 48 kHz. */
    private static final double SETTLED_FRAMES = 2e-9;
    /** Edges that would move further than this don't fit; the plan refuses them, and the sum must stay sane. */
    private static final double MOST_SHIFT_FRAMES = Gaussian.SIGMA_FRAMES;
    private static final double PER_FRAME = 1 / Gaussian.SIGMA_FRAMES;
    /** Edges further apart than 5.3 sigma pull by less than 6e-8 of a step, 5 ps at 48 kHz, and are left alone. */
    static final double PULL_FRAMES = 5.3 * Gaussian.SIGMA_FRAMES;

    private final Hall hall;
    private final Motion motion;
    private final Axis axis;
    private final ToothTrain teeth;
    private final StepTrain placed;

    /** Edges still to be placed: where the geometry puts them, how far they were moved, and to which level they go. */
    private final double[] trueFrame = new double[CAPACITY];
    private final double[] moved = new double[CAPACITY];
    private final double[] levelAfter = new double[CAPACITY];
    private int count;

    /** Edges of the current tooth that are still to come: leading and trailing, trailing, none. */
    private int edgesDue;
    private double lastLevel;

    EdgeVoice(Hall hall, Motion motion, Axis axis, ToothTrain teeth) {
        this.hall = hall;
        this.motion = motion;
        this.axis = axis;
        this.teeth = teeth;
        this.lastLevel = hall.lowVolts();
        this.placed = new StepTrain(CAPACITY, hall.lowVolts());
    }

    @Override
    public double restVolts() {
        return hall.lowVolts();
    }

    @Override
    public void render(double[] out, long faultsOn) {
        teeth.rebase(axis.follow(motion));
        announce(faultsOn);
        solve();
        place();
        placed.render(out, Motion.QUANTUM);
        placed.shift(Motion.QUANTUM);
        for (int k = 0; k < count; k++) {
            trueFrame[k] -= Motion.QUANTUM;
        }
    }

    /** Takes in the edges up to the window's end. */
    private void announce(long faultsOn) {
        double end = axis.cyclesAt(motion.windowEndTurns());
        while (count < CAPACITY) {
            if (edgesDue == 0) {
                if (teeth.earliestLeading() >= end) {
                    return;
                }
                teeth.next(faultsOn);
                edgesDue = teeth.strength == 0 ? 0 : 2;
            } else if (edgesDue == 2) {
                if (teeth.leadingAt >= end) {
                    return;
                }
                add(teeth.leadingAt, hall.lowVolts() + teeth.strength * (hall.highVolts() - hall.lowVolts()));
                edgesDue = 1;
            } else {
                if (teeth.trailingAt >= end) {
                    return;
                }
                add(teeth.trailingAt, hall.lowVolts());
                edgesDue = 0;
            }
        }
    }

    private void add(double cycles, double level) {
        double frame = axis.cyclesPerTurn() > 0
                ? motion.frameAt(axis.turnsAt(cycles))
                : Double.NEGATIVE_INFINITY;
        if (frame < -Gaussian.REACH_FRAMES * 2) {
            // before the start: only its level is left
            placed.begin(level);
            lastLevel = level;
            return;
        }
        trueFrame[count] = frame;
        moved[count] = 0;
        levelAfter[count++] = level;
    }

    private void solve() {
        for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
            double most = 0;
            for (int k = 0; k < count; k++) {
                most = Math.max(most, Math.abs(improve(k)));
            }
            if (most < SETTLED_FRAMES) {
                return;
            }
        }
    }

    /** One Newton step for edge k; returns how far it moved. */
    private double improve(int k) {
        double at = trueFrame[k];
        double pull = k > 0 && at - trueFrame[k - 1] > PULL_FRAMES ? 0 : placed.missingAt(at, PULL_FRAMES);
        for (int j = k - 1; j >= 0 && at - trueFrame[j] < PULL_FRAMES; j--) {
            pull += change(j) * (Gaussian.step((at - trueFrame[j] - moved[j]) * PER_FRAME) - 1);
        }
        for (int j = k + 1; j < count && trueFrame[j] - at < PULL_FRAMES; j++) {
            pull += change(j) * Gaussian.step((at - trueFrame[j] - moved[j]) * PER_FRAME);
        }
        if (pull == 0 && moved[k] == 0) {
            return 0;
        }
        double u = moved[k] * PER_FRAME;
        double delta = change(k);
        double miss = delta * (Gaussian.step(-u) - 0.5) + pull;
        double next = moved[k] + miss / (delta * Gaussian.density(u) * PER_FRAME);
        next = Math.max(-MOST_SHIFT_FRAMES, Math.min(MOST_SHIFT_FRAMES, next));
        double by = next - moved[k];
        moved[k] = next;
        return by;
    }

    private double change(int k) {
        return levelAfter[k] - (k == 0 ? lastLevel : levelAfter[k - 1]);
    }

    /** Hands over the edges that reach into this quantum. */
    private void place() {
        int done = 0;
        while (done < count && trueFrame[done] < Motion.QUANTUM + Gaussian.REACH_FRAMES + MOST_SHIFT_FRAMES) {
            placed.stepTo(trueFrame[done] + moved[done], levelAfter[done]);
            lastLevel = levelAfter[done++];
        }
        count -= done;
        System.arraycopy(trueFrame, done, trueFrame, 0, count);
        System.arraycopy(moved, done, moved, 0, count);
        System.arraycopy(levelAfter, done, levelAfter, 0, count);
    }
}
