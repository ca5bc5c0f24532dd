package understudy.rig;

import java.util.Optional;

/**
 * A rig clipped on to an input: what arrives there. Every part counts at its nominal value; {@link WorstCase} goes
 * through the tolerances. Frequencies in Hz, from 0. Owned by one thread: it keeps what it has worked out.
 */
public final class Connection {
    private final Rig rig;
    private final Input input;
    private final Wiring on;
    private final double[] beforeTouch;
    private final double[] rest;

    public Connection(Rig rig, Input input) {
        this.rig = rig;
        this.input = input;
        this.on = new Wiring(rig, input, Wiring.Clips.ON, Wiring.Shunting.ALL);
        this.beforeTouch = Wiring.beforeTouch(rig, input, Wiring.Shunting.ALL);
        this.rest = on.network.solve(Network.Hold.SETTLED, beforeTouch, 0, 0).state();
    }

    public Rig rig() {
        return rig;
    }

    public Input input() {
        return input;
    }

    /** Volts of the source for a sample of 1.0. */
    private double voltsPerFullScale() {
        double volts = rig.output().fullScaleVolts().nominal();
        return rig.output().inverted() ? -volts : volts;
    }

    /** With nothing played, long after clipping on. */
    public double restVolts(Probe probe) {
        return probe.volts(on, on.network.solve(Network.Hold.SETTLED, beforeTouch, 0, 0).nodeVolts());
    }

    /** By how much clipping on moves the resting voltage there. */
    public double biasShiftVolts(Probe probe) {
        Wiring apart = new Wiring(rig, input, Wiring.Clips.OFF, Wiring.Shunting.ALL);
        double before = probe.volts(apart,
                apart.network.solve(Network.Hold.MID_BAND, beforeTouch, 0, 0).nodeVolts());
        return restVolts(probe) - before;
    }

    /** What a signal becomes in between the lowest and the highest frequencies that pass. */
    public Levels levels(Use use) {
        double pinLow = Double.NEGATIVE_INFINITY;
        double pinHigh = Double.POSITIVE_INFINITY;
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        double peak = use.level() * voltsPerFullScale();
        for (double duty : new double[] {use.leastDuty(), use.mostDuty()}) {
            double mean = peak * (2 * duty - 1);
            double[] state = duty == 0.5 ? rest : on.network.solve(Network.Hold.SETTLED, rest, mean, 0).state();
            double[] one = on.network.solve(Network.Hold.MID_BAND, state, peak, 0).nodeVolts();
            double[] other = on.network.solve(Network.Hold.MID_BAND, state, -peak, 0).nodeVolts();
            boolean upright = Probe.PINS.volts(on, one) >= Probe.PINS.volts(on, other);
            double[] upper = upright ? one : other;
            double[] lower = upright ? other : one;
            pinLow = Math.max(pinLow, Probe.PINS.volts(on, lower));
            pinHigh = Math.min(pinHigh, Probe.PINS.volts(on, upper));
            low = Math.max(low, Probe.COMPARATOR.volts(on, lower));
            high = Math.min(high, Probe.COMPARATOR.volts(on, upper));
        }
        double[] still = on.network.solve(Network.Hold.MID_BAND, rest, 0, 0).nodeVolts();
        return new Levels(Probe.PINS.volts(on, still), pinLow, pinHigh, Probe.COMPARATOR.volts(on, still), low, high);
    }

    /**
     * Gain at a frequency.
     *
     * @param volts    there, for a sine that reaches full scale
     * @param phaseRad by which it leads the samples, -pi to pi
     */
    public record Gain(double volts, double phaseRad) {}

    /** For signals small enough that no clamp conducts that rests with nothing played. */
    public Gain gain(Probe probe, double hz) {
        int conducting = on.network.solve(Network.Hold.SETTLED, rest, 0, 0).conducting();
        double[][] response = new StateSpace(on.network, conducting).response(hz);
        double[] none = new double[on.network.nodeCount() + 1];
        double reference = probe.volts(on, none); // what the comparator subtracts is no part of a gain
        double real = (probe.volts(on, response[0]) - reference) * voltsPerFullScale();
        double imaginary = (probe.volts(on, response[1]) - reference) * voltsPerFullScale();
        return new Gain(Math.hypot(real, imaginary), Math.atan2(imaginary, real));
    }

    /** Volts between the pins for a sample of 1.0, under load, at a frequency: what pattern volts are divided by. */
    public OutputScale scale(double hz, boolean calibrated) {
        return new OutputScale(gain(Probe.PINS, hz).volts(), calibrated);
    }

    /** Where, going down from {@code fromHz}, the gain has fallen by 3 dB; none when direct voltage passes. */
    public Optional<Double> lowCornerHz(Probe probe, double fromHz) {
        double wanted = gain(probe, fromHz).volts() / Math.sqrt(2);
        double inside = fromHz;
        double outside = fromHz;
        do {
            inside = outside;
            outside /= 2;
            if (outside < 1e-6) {
                return Optional.empty();
            }
        } while (gain(probe, outside).volts() > wanted);
        for (int i = 0; i < 60; i++) {
            double middle = Math.sqrt(inside * outside);
            if (gain(probe, middle).volts() > wanted) {
                inside = middle;
            } else {
                outside = middle;
            }
        }
        return Optional.of(inside);
    }

    /** Lowest frequency of a sine at this level that the transformer's core carries; none without a transformer. */
    public Optional<Double> leastHz(Use use) {
        if (!(rig.divider().coupling() instanceof Coupling.Transformer transformer)) {
            return Optional.empty();
        }
        double[] volts = on.network.solve(Network.Hold.MID_BAND, rest, use.level() * voltsPerFullScale(), 0).nodeVolts();
        return Optional.of(transformer.leastHz(Math.abs(volts[on.core])));
    }

    /** From rest, long after clipping on. */
    public Transient fromRest(double stepSeconds) {
        return new Transient(on, voltsPerFullScale(), stepSeconds, rest);
    }

    /** From rest, for samples so many seconds apart. */
    public DroopCorrection droopCorrection(double stepSeconds) {
        return new DroopCorrection(rig, input, voltsPerFullScale(), stepSeconds);
    }

    /** From the instant at which the clips touch. */
    public Transient fromFirstTouch(double stepSeconds) {
        return new Transient(on, voltsPerFullScale(), stepSeconds, beforeTouch);
    }
}
