package understudy.rig;

import understudy.refusal.Refused;

/**
 * A rig on an input, followed through time. The audio output's volts run straight from sample to sample; for such a
 * source each step is exact. Where a clamp begins or ceases to conduct within a step, that instant is solved for and the
 * step goes on from there; a clamp that passes its level only between two samples, and at neither, goes unseen. Owned by
 * one thread.
 */
public final class Transient {
    private static final double SAME_INSTANT = 1e-9;
    private static final int MOST_SWITCHES = 64;

    private final Wiring wiring;
    private final double stepSeconds;
    private final double voltsPerFullScale;
    private final StateSpace[] spaces;
    private final TimeStep[] wholeSteps;
    private final double[] nodeVolts;
    private double[] state;
    private double[] next;
    private double sourceVolts;
    private int conducting;

    Transient(Wiring wiring, double voltsPerFullScale, double stepSeconds, double[] start) {
        if (!(stepSeconds >= 1e-9 && stepSeconds <= 1e3)) {
            throw new Refused("a step of " + stepSeconds + " s was asked for", "allowed are 1 ns to 1000 s");
        }
        this.wiring = wiring;
        this.stepSeconds = stepSeconds;
        this.voltsPerFullScale = voltsPerFullScale;
        this.spaces = new StateSpace[1 << wiring.network.clampCount()];
        this.wholeSteps = new TimeStep[spaces.length];
        this.nodeVolts = new double[wiring.network.nodeCount() + 1];
        this.state = start.clone();
        this.next = new double[start.length];
        jumpTo(0);
    }

    /** The output jumps, at once, to a part of its full scale, -1 to 1. */
    public void jumpTo(double fraction) {
        sourceVolts = fraction * voltsPerFullScale;
        conducting = wiring.network.solve(Network.Hold.INSTANT, state, sourceVolts, 0).conducting();
        space().read(state, sourceVolts, nodeVolts);
    }

    /** One step later, while the output ran straight to this part of its full scale, -1 to 1. */
    public void stepTo(double fraction) {
        double start = sourceVolts;
        double change = fraction * voltsPerFullScale - start;
        double done = 0;
        int switches = 0;
        while (misfit(done, 1 - done, start, change) > Network.MISFIT_VOLTS && switches++ < MOST_SWITCHES) {
            done += toFirstMisfit(done, start, change);
            swap();
            for (int c = 0; c < wiring.network.clampCount(); c++) {
                if (wiring.network.misfitVolts(c, conducting, nodeVolts) > 0) {
                    conducting ^= 1 << c;
                    break;
                }
            }
        }
        swap();
        sourceVolts = start + change;
    }

    /** Volts there, at the end of the last step. */
    public double volts(Probe probe) {
        return probe.volts(wiring, nodeVolts);
    }

    /** The integral, from none, of the volts across a transformer's primary, less its winding; 0 without one. */
    public double coreVoltSeconds() {
        return wiring.core == 0 ? 0 : wiring.coreHenries * state[wiring.coreStore];
    }

    private void swap() {
        double[] old = state;
        state = next;
        next = old;
    }

    /**
     * Moves on by a part of the step, into {@code next}, as if the clamps stayed as they are.
     *
     * @return by how many volts the worst of them would not fit; negative when all fit
     */
    private double misfit(double done, double part, double start, double change) {
        double from = start + change * done;
        double to = start + change * (done + part);
        step(part).advance(state, from, to, next);
        space().read(next, to, nodeVolts);
        double worst = Double.NEGATIVE_INFINITY;
        for (int c = 0; c < wiring.network.clampCount(); c++) {
            worst = Math.max(worst, wiring.network.misfitVolts(c, conducting, nodeVolts));
        }
        return worst;
    }

    /** Leaves in {@code next} the state just past the first instant that does not fit; regula falsi (Illinois). */
    private double toFirstMisfit(double done, double start, double change) {
        double good = 0;
        double bad = 1 - done;
        double atBad = misfit(done, bad, start, change);
        double atGood = Math.min(misfit(done, 0, start, change), -Network.MISFIT_VOLTS);
        int side = 0;
        for (int i = 0; i < 60 && bad - good > SAME_INSTANT && atBad > Network.MISFIT_VOLTS; i++) {
            double middle = i % 3 == 2 ? (good + bad) / 2 : (good * atBad - bad * atGood) / (atBad - atGood);
            double here = misfit(done, middle, start, change);
            if (here > 0) {
                bad = middle;
                atBad = here;
                atGood = side == 1 ? atGood / 2 : atGood;
                side = 1;
            } else {
                good = middle;
                atGood = Math.min(here, -1e-15);
                atBad = side == -1 ? atBad / 2 : atBad;
                side = -1;
            }
        }
        misfit(done, bad, start, change);
        return bad;
    }

    private StateSpace space() {
        if (spaces[conducting] == null) {
            spaces[conducting] = new StateSpace(wiring.network, conducting);
        }
        return spaces[conducting];
    }

    private TimeStep step(double part) {
        if (part != 1) {
            return new TimeStep(space(), stepSeconds * part);
        }
        if (wholeSteps[conducting] == null) {
            wholeSteps[conducting] = new TimeStep(space(), stepSeconds);
        }
        return wholeSteps[conducting];
    }
}
