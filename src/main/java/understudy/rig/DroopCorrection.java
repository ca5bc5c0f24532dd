package understudy.rig;

/**
 * The exact inverse of what couples the audio output to the pins (capacitors, transformer): turns the volts that are
 * wanted between the pins into parts of full scale, sample by sample, so that long levels do not droop. Between samples
 * the output is taken to run straight. What only smooths, leads and filters, is left alone, and so are clamps.
 *
 * <p>The wanted volts must have no mean: direct voltage can't pass, and the output would run away to its end. Where it
 * would have to go beyond full scale it stays there, counts that, and goes on from what was really played. Allocates
 * nothing after construction. Owned by one thread.
 */
public final class DroopCorrection {
    private final StateSpace space;
    private final TimeStep step;
    private final Wiring wiring;
    private final double voltsPerFullScale;
    private final double restVolts;
    private final double pinVoltsPerVolt;
    private final double pinVoltsPerVoltAtOnce;
    private final double[] nodeVolts;
    private double[] state;
    private double[] next;
    private double sourceVolts;
    private boolean started;
    private long clippedFrames;

    DroopCorrection(Rig rig, Input input, double voltsPerFullScale, double stepSeconds) {
        this.wiring = new Wiring(rig, input, Wiring.Clips.ON, Wiring.Shunting.NONE);
        this.voltsPerFullScale = voltsPerFullScale;
        Network network = wiring.network;
        Network.Solution rest = network.solve(
                Network.Hold.SETTLED, Wiring.beforeTouch(rig, input, Wiring.Shunting.NONE), 0, 0);
        this.space = new StateSpace(network, rest.conducting());
        this.step = new TimeStep(space, stepSeconds);
        this.nodeVolts = new double[network.nodeCount() + 1];
        this.state = rest.state();
        this.next = state.clone();
        this.restVolts = pinVolts(state, 0);
        this.pinVoltsPerVoltAtOnce = pinVolts(state, 1) - restVolts;
        step.advance(state, 0, 1, next);
        double reached = pinVolts(next, 1);
        step.advance(state, 0, 0, next);
        this.pinVoltsPerVolt = reached - pinVolts(next, 0);
    }

    /**
     * What to play in the next sample.
     *
     * @param wantedVolts between the pins, from their resting voltage
     * @return a part of full scale, -1 to 1
     */
    public double next(double wantedVolts) {
        double before = sourceVolts;
        double needed;
        if (started) {
            step.advance(state, before, 0, next);
            needed = (restVolts + wantedVolts - pinVolts(next, 0)) / pinVoltsPerVolt;
        } else {
            needed = wantedVolts / pinVoltsPerVoltAtOnce;
        }
        double most = Math.abs(voltsPerFullScale);
        sourceVolts = Math.max(-most, Math.min(most, needed));
        if (sourceVolts != needed) {
            clippedFrames++;
        }
        if (started) {
            step.advance(state, before, sourceVolts, next);
            double[] old = state;
            state = next;
            next = old;
        }
        started = true;
        return sourceVolts / voltsPerFullScale;
    }

    /** How many samples would have had to go beyond full scale. */
    public long clippedFrames() {
        return clippedFrames;
    }

    private double pinVolts(double[] at, double source) {
        space.read(at, source, nodeVolts);
        return Probe.PINS.volts(wiring, nodeVolts);
    }
}
