package understudy.wave;

import java.util.List;
import understudy.motion.Motion;
import understudy.pattern.DrawnCycle;

/**
 * Straight lines in angle, with steps and corners smoothed by the edge kernel around their exact instants: the plain
 * line, plus what smoothing adds near each knot. (Smoothing is linear, so knots may lie as close as they like.)
 */
final class LineVoice implements Voice {
    private static final int CAPACITY = 512;
    private static final double PER_FRAME = 1 / Gaussian.SIGMA_FRAMES;

    private final Motion motion;
    private final Axis axis;
    private final double restVolts;

    /** Knots of one cycle: where, the volts just after, the slope after in volts a cycle, and what changes there. */
    private final double[] knotAt;
    private final double[] voltsAfter;
    private final double[] slopeAfter;
    private final double[] step;
    private final double[] slopeChange;

    private long cycle;
    private int index;

    private final double[] atFrame = new double[CAPACITY];
    private final double[] atCycles = new double[CAPACITY];
    private final int[] knot = new int[CAPACITY];
    private final double[] bend = new double[CAPACITY];
    private int count;
    /** The line being drawn: its knot, and where that was. */
    private int line;
    private double lineFrom;

    LineVoice(DrawnCycle drawn, double restVolts, Motion motion, Axis axis) {
        this.motion = motion;
        this.axis = axis;
        this.restVolts = restVolts;
        List<DrawnCycle.Point> points = drawn.points();
        int n = points.size();
        knotAt = new double[n];
        voltsAfter = new double[n];
        slopeAfter = new double[n];
        step = new double[n];
        slopeChange = new double[n];
        double[] endVolts = new double[n];
        for (int k = 0; k < n; k++) {
            DrawnCycle.Point here = points.get(k);
            DrawnCycle.Point next = points.get((k + 1) % n);
            knotAt[k] = here.angleDeg() / drawn.overDeg();
            double length = next.angleDeg() / drawn.overDeg() + (k + 1 == n ? 1 : 0) - knotAt[k];
            voltsAfter[k] = here.volts();
            // two points at one angle: a step, drawn by the second one's own line
            slopeAfter[k] = length > 0 ? (next.volts() - here.volts()) / length : 0;
            endVolts[k] = length > 0 ? next.volts() : here.volts();
        }
        for (int k = 0; k < n; k++) {
            int before = (k + n - 1) % n;
            step[k] = voltsAfter[k] - endVolts[before];
            slopeChange[k] = slopeAfter[k] - slopeAfter[before];
        }
        cycle = (long) Math.floor(axis.startCycle()) - 2;
    }

    @Override
    public double restVolts() {
        return restVolts;
    }

    @Override
    public void render(double[] out, long faultsOn) {
        long moved = axis.follow(motion);
        lineFrom -= moved;
        for (int k = 0; k < count; k++) {
            atCycles[k] -= moved;
        }
        announce();
        drawLines(out);
        smoothKnots(out);
        forget();
    }

    private void announce() {
        double end = axis.cyclesAt(motion.windowEndTurns());
        while (count < CAPACITY) {
            double at = axis.aboveBase(cycle, knotAt[index]);
            if (at >= end) {
                return;
            }
            double frame = axis.cyclesPerTurn() > 0
                    ? motion.frameAt(axis.turnsAt(at))
                    : Double.NEGATIVE_INFINITY;
            if (frame < -Gaussian.REACH_FRAMES) {
                line = index;
                lineFrom = at;
            } else {
                atFrame[count] = frame;
                atCycles[count] = at;
                knot[count] = index;
                double speed = axis.cyclesPerTurn() * motion.speedAtFrame(Math.max(0, frame));
                bend[count++] = slopeChange[index] * speed * Gaussian.SIGMA_FRAMES;
            }
            if (++index == knotAt.length) {
                index = 0;
                cycle++;
            }
        }
    }

    private void drawLines(double[] out) {
        double[] turns = motion.turns();
        int next = 0;
        int drawing = line;
        double from = lineFrom;
        for (int i = 0; i < Motion.QUANTUM; i++) {
            while (next < count && atFrame[next] <= i) {
                drawing = knot[next];
                from = atCycles[next++];
            }
            out[i] = voltsAfter[drawing] + slopeAfter[drawing] * (axis.cyclesAt(turns[i]) - from);
        }
    }

    private void smoothKnots(double[] out) {
        for (int k = 0; k < count; k++) {
            double at = atFrame[k];
            int begin = Math.max(0, (int) Math.ceil(at - Gaussian.REACH_FRAMES));
            int end = Math.min(Motion.QUANTUM, (int) Math.floor(at + Gaussian.REACH_FRAMES) + 1);
            double delta = step[knot[k]];
            for (int n = begin; n < end; n++) {
                double u = (n - at) * PER_FRAME;
                out[n] += bend[k] * Gaussian.corner(u) + delta * (Gaussian.step(u) - (n >= at ? 1 : 0));
            }
        }
    }

    private void forget() {
        int gone = 0;
        while (gone < count && atFrame[gone] + Gaussian.REACH_FRAMES < Motion.QUANTUM) {
            line = knot[gone];
            lineFrom = atCycles[gone++];
        }
        count -= gone;
        for (int k = 0; k < count; k++) {
            atFrame[k] = atFrame[k + gone] - Motion.QUANTUM;
            atCycles[k] = atCycles[k + gone];
            knot[k] = knot[k + gone];
            bend[k] = bend[k + gone];
        }
    }
}
