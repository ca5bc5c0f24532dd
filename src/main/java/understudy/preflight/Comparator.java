package understudy.preflight;

import java.util.Arrays;
import understudy.pattern.Bursts;
import understudy.rig.Arming;
import understudy.rig.Input;
import understudy.rig.PulledUpInput;
import understudy.rig.ReluctorInput;
import understudy.rig.ResistiveInput;

/** When the input's comparator switches on its timing edge, and how much each swing has to spare. */
sealed interface Comparator permits Comparator.Fixed, Comparator.Following, Ringing {

    /** The instants of the timing edge, as places between the samples. */
    double[] switches(double[] volts, double stepSeconds);

    /** What one swing has to spare, so long after the timing edge of the swing before. */
    Spare spare(Swing swing, Swing before, double sinceSeconds);

    /** From one timing edge to the next: the signal goes down once and up once. */
    record Swing(double highestVolts, double lowestVolts) {}

    /** Volts beyond what is needed, and how many times the need is met, on the worse side; 0 volts or 1 is the limit. */
    record Spare(double volts, double times) {
        double db() {
            return 20 * Math.log10(times);
        }
    }

    /** Of an input; one without an edge of its own takes the edge that the pattern's timing events make. */
    static Comparator of(Setup setup, double restVolts, boolean patternRises) {
        Input input = setup.built().input();
        if (setup.output().signal() instanceof Bursts bursts) {
            return new Ringing(((ResistiveInput) input).leastPeakVolts(), restVolts, 1 / bursts.frequencyHz());
        } else if (input instanceof ReluctorInput reluctor) {
            boolean rising = reluctor.timing() == ReluctorInput.Edge.RISING;
            if (reluctor.arming() instanceof Arming.Hysteresis fixed) {
                return new Fixed(fixed.lowVolts(), fixed.highVolts(), restVolts, rising);
            }
            return new Following((Arming.Adaptive) reluctor.arming(), rising);
        } else if (input instanceof PulledUpInput pulledUp) {
            return new Fixed(pulledUp.lowBelowVolts(), pulledUp.highAboveVolts(), restVolts, patternRises);
        }
        double peak = ((ResistiveInput) input).leastPeakVolts();
        return new Fixed(restVolts - peak, restVolts + peak, restVolts, patternRises);
    }

    /** Up above one level, down below another. */
    record Fixed(double lowVolts, double highVolts, double restVolts, boolean rising) implements Comparator {
        @Override
        public double[] switches(double[] volts, double stepSeconds) {
            double[] at = new double[64];
            int count = 0;
            int state = 0; // 1 high, -1 low, 0 not known yet
            for (int i = 0; i < volts.length; i++) {
                int next = volts[i] > highVolts ? 1 : volts[i] < lowVolts ? -1 : state;
                if (next != state && state != 0 && next == (rising ? 1 : -1)) {
                    at = count == at.length ? Arrays.copyOf(at, 2 * count) : at;
                    at[count++] = passage(volts, i, rising ? highVolts : lowVolts);
                }
                state = next;
            }
            return Arrays.copyOf(at, count);
        }

        @Override
        public Spare spare(Swing swing, Swing before, double sinceSeconds) {
            double above = swing.highestVolts - highVolts;
            double below = lowVolts - swing.lowestVolts;
            return above < below
                    ? new Spare(above, times(swing.highestVolts - restVolts, highVolts - restVolts))
                    : new Spare(below, times(restVolts - swing.lowestVolts, restVolts - lowVolts));
        }
    }

    /** Arms at a part of the last peak, switches at zero. */
    record Following(Arming.Adaptive arming, boolean rising) implements Comparator {
        @Override
        public double[] switches(double[] volts, double stepSeconds) {
            double[] at = new double[64];
            int count = 0;
            double sign = rising ? -1 : 1;
            double lastPeak = 0;
            double peak = 0;
            double lastPulse = Double.NEGATIVE_INFINITY;
            boolean armed = false;
            for (int i = 1; i < volts.length; i++) {
                double now = sign * volts[i];
                if (now > 0) {
                    peak = Math.max(peak, now);
                    armed |= now >= threshold(lastPeak, (i - lastPulse) * stepSeconds);
                } else if (sign * volts[i - 1] > 0) {
                    if (armed) {
                        at = count == at.length ? Arrays.copyOf(at, 2 * count) : at;
                        lastPulse = passage(volts, i, 0);
                        at[count++] = lastPulse;
                    }
                    lastPeak = peak >= arming.minimumVolts() ? peak : lastPeak;
                    peak = 0;
                    armed = false;
                }
            }
            return Arrays.copyOf(at, count);
        }

        private double threshold(double lastPeak, double sinceSeconds) {
            return sinceSeconds > arming.decaySeconds()
                    ? arming.minimumVolts()
                    : Math.max(arming.minimumVolts(), arming.part() * lastPeak);
        }

        @Override
        public Spare spare(Swing swing, Swing before, double sinceSeconds) {
            double peak = rising ? -swing.lowestVolts : swing.highestVolts;
            double back = rising ? swing.highestVolts : -swing.lowestVolts;
            double needed = threshold(rising ? -before.lowestVolts : before.highestVolts, sinceSeconds);
            return back < peak - needed
                    ? new Spare(back, times(back + needed, needed)) // armed, but it hardly comes back through zero
                    : new Spare(peak - needed, times(peak, needed));
        }
    }

    private static double passage(double[] volts, int after, double level) {
        return after - 1 + (level - volts[after - 1]) / (volts[after] - volts[after - 1]);
    }

    /** How many times a need is met; a side that is beyond its level at rest needs nothing. */
    private static double times(double given, double needed) {
        return needed <= 0 ? Double.POSITIVE_INFINITY : Math.max(0, given) / needed;
    }
}
