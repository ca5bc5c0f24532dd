package understudy.wave;

import understudy.motion.Motion;
import understudy.pattern.Fault;

/** Moments at which something short happens on a line, in order, found as the window reaches them. */
interface Moments {

    /**
     * Looks for the next moment before the window's end.
     *
     * @return frames since the quantum's start, or NaN when there is none yet; the same is not given twice
     */
    double next(Switch when, long faultsOn);

    /** How long what happens at the moment last given lasts, frames. */
    double lengthFrames();

    /** At one angle of every turn in which the fault acts. */
    final class AtAngle implements Moments {
        private final Motion motion;
        private final Axis turnAxis;
        private final double at;
        private final double lengthFrames;
        private long turn;

        AtAngle(double atDeg, double lengthFrames, Motion motion, Axis turnAxis) {
            this.motion = motion;
            this.turnAxis = turnAxis;
            this.at = atDeg / 360;
            this.lengthFrames = lengthFrames;
            this.turn = (long) Math.floor(turnAxis.startCycle());
        }

        @Override
        public double next(Switch when, long faultsOn) {
            double end = turnAxis.cyclesAt(motion.windowEndTurns());
            while (turnAxis.cyclesPerTurn() > 0 && turnAxis.aboveBase(turn, at) < end) {
                double frame = motion.frameAt(turnAxis.turnsAt(turnAxis.aboveBase(turn, at)));
                long here = turn++;
                if (motion.startFrame() + frame >= 0 && when.acts(here, motion.startFrame() + frame, faultsOn)) {
                    return frame;
                }
            }
            return Double.NaN;
        }

        @Override
        public double lengthFrames() {
            return lengthFrames;
        }
    }

    /** Once in each stretch of time of equal length, somewhere in it. */
    final class ByChance implements Moments {
        private final Motion motion;
        private final Axis turnAxis;
        private final Chance chance;
        private final double slotFrames;
        private final double meanLengthFrames;
        private double lengthFrames;
        private long slot;

        ByChance(Fault.Flicker flicker, Motion motion, Axis turnAxis, Chance chance, int rateHz) {
            this.motion = motion;
            this.turnAxis = turnAxis;
            this.chance = chance;
            this.slotFrames = rateHz / flicker.perSecond();
            this.meanLengthFrames = flicker.seconds() * rateHz;
        }

        @Override
        public double next(Switch when, long faultsOn) {
            while (true) {
                double frame = (slot + chance.uniform(2 * slot)) * slotFrames - motion.startFrame();
                if (frame >= 2 * Motion.QUANTUM) {
                    return Double.NaN;
                }
                // half to one and a half times the mean
                lengthFrames = meanLengthFrames * (0.5 + chance.uniform(2 * slot + 1));
                slot++;
                double turn = turnAxis.base() + turnAxis.cyclesAt(motion.windowStartTurns());
                if (when.acts((long) Math.floor(turn), motion.startFrame() + frame, faultsOn)) {
                    return frame;
                }
            }
        }

        @Override
        public double lengthFrames() {
            return lengthFrames;
        }
    }
}
