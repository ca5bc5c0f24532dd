package understudy.wave;

import understudy.motion.Motion;
import understudy.pattern.Fault;

/** A disturbance that comes and goes over {@value #SLEW_SECONDS} s, so that the volts don't jump. */
abstract class Gradual implements Disturbance {
    private static final double SLEW_SECONDS = 0.005;

    private final Switch when;
    private final double mostChange;
    private double presence;

    Gradual(Switch when, int rateHz) {
        this.when = when;
        this.mostChange = 1 / (SLEW_SECONDS * rateHz);
    }

    @Override
    public final void apply(double[] volts, Motion motion, Axis turnAxis, long faultsOn) {
        double[] turns = motion.turns();
        for (int i = 0; i < Motion.QUANTUM; i++) {
            double turn = turnAxis.cyclesAt(turns[i]);
            long frame = motion.startFrame() + i;
            boolean wanted = when.acts(turnAxis.base() + (long) Math.floor(turn), frame, faultsOn);
            if (wanted ? presence < 1 : presence > 0) {
                // at the very start there is nothing to jump from
                presence = frame == 0 ? 1 : Math.max(0, Math.min(1, presence + (wanted ? mostChange : -mostChange)));
            }
            if (presence > 0) {
                volts[i] = disturbed(volts[i], presence, turn, frame);
            }
        }
    }

    /** What becomes of one frame's volts; {@code presence} runs from 0 to 1, {@code turn} counts within base. */
    abstract double disturbed(double volts, double presence, double turn, long frame);

    /** Multiplies. */
    static final class Gain extends Gradual {
        private final double factor;

        Gain(Switch when, double factor, int rateHz) {
            super(when, rateHz);
            this.factor = factor;
        }

        @Override
        double disturbed(double volts, double presence, double turn, long frame) {
            return volts * (1 + presence * (factor - 1));
        }
    }

    /** Shrinks and recovers once a turn. */
    static final class Sway extends Gradual {
        private final Fault.RunOut runOut;

        Sway(Switch when, Fault.RunOut runOut, int rateHz) {
            super(when, rateHz);
            this.runOut = runOut;
        }

        @Override
        double disturbed(double volts, double presence, double turn, long frame) {
            double away = 0.5 * (1 - Sine.cosineOfTurns(turn - runOut.atDeg() / 360));
            return volts * (1 - presence * runOut.amplitude() * away);
        }
    }

    /** Adds white noise. */
    static final class Hiss extends Gradual {
        private final double rmsVolts;
        private final Chance chance;

        Hiss(Switch when, double rmsVolts, Chance chance, int rateHz) {
            super(when, rateHz);
            this.rmsVolts = rmsVolts;
            this.chance = chance;
        }

        @Override
        double disturbed(double volts, double presence, double turn, long frame) {
            return volts + presence * rmsVolts * chance.bell(frame);
        }
    }

    /** Adds a sine of fixed frequency, whose phase is exact for days. */
    static final class Hum extends Gradual {
        private final double peakVolts;
        private final double cyclesPerFrame;

        Hum(Switch when, Fault.Hum hum, int rateHz) {
            super(when, rateHz);
            this.peakVolts = hum.rmsVolts() * Math.sqrt(2);
            this.cyclesPerFrame = hum.frequencyHz() / rateHz;
        }

        @Override
        double disturbed(double volts, double presence, double turn, long frame) {
            double cycles = cyclesPerFrame * frame;
            double fraction = (cycles - Math.rint(cycles)) + Math.fma(cyclesPerFrame, (double) frame, -cycles);
            return volts + presence * peakVolts * Sine.ofTurns(fraction);
        }
    }
}
