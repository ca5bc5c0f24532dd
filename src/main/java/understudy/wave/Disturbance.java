package understudy.wave;

import understudy.motion.Motion;
import understudy.pattern.Fault;

/** A fault of the line, not of the wheel: acts on the volts of an output, a quantum at a time. */
interface Disturbance {

    /** Changes the quantum's volts; {@code turnAxis} counts the output's own turns. */
    void apply(double[] volts, Motion motion, Axis turnAxis, long faultsOn);

    /** The disturbance of a fault; null for those that shape the wheel's teeth alone. */
    static Disturbance of(Fault fault, Switch when, Motion motion, Axis turnAxis, double restVolts, Chance chance,
            int rateHz) {
        if (fault instanceof Fault.Level level) {
            return new Gradual.Gain(when, level.factor(), rateHz);
        } else if (fault instanceof Fault.SwappedPolarity) {
            return new Gradual.Gain(when, -1, rateHz);
        } else if (fault instanceof Fault.RunOut runOut) {
            return runOut.amplitude() == 0 ? null : new Gradual.Sway(when, runOut, rateHz);
        } else if (fault instanceof Fault.Noise noise) {
            return new Gradual.Hiss(when, noise.rmsVolts(), chance, rateHz);
        } else if (fault instanceof Fault.Hum hum) {
            return new Gradual.Hum(when, hum, rateHz);
        } else if (fault instanceof Fault.Dropout dropout) {
            double lengthFrames = dropout.seconds() * rateHz;
            return new Cut(when, new Moments.AtAngle(dropout.atDeg(), lengthFrames, motion, turnAxis), restVolts);
        } else if (fault instanceof Fault.Flicker flicker) {
            return new Cut(when, new Moments.ByChance(flicker, motion, turnAxis, chance, rateHz), restVolts);
        } else if (fault instanceof Fault.Spikes spikes) {
            return new Spiking(when, spikes, new Moments.AtAngle(spikes.atDeg(), 0, motion, turnAxis), rateHz);
        }
        return null;
    }
}
