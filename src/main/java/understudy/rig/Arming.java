package understudy.rig;

import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/** When a reluctor's comparator switches; volts are at the comparator, from its reference. */
public sealed interface Arming {

    /** Least peak, either way, at which it switches at all. */
    double leastPeakVolts();

    /** Switches up above {@code highVolts} and down below {@code lowVolts}, always the same. */
    record Hysteresis(double lowVolts, double highVolts) implements Arming {
        public Hysteresis {
            if (!(lowVolts < highVolts && lowVolts >= -60 && highVolts <= 60)) {
                throw new Refused("the hysteresis runs from " + lowVolts + " V to " + highVolts + " V",
                        "the lower threshold must lie below the upper one, both within 60 V");
            }
        }

        @Override
        public double leastPeakVolts() {
            return Math.max(Math.max(highVolts, -lowVolts), 0);
        }
    }

    /**
     * Arms at a part of the last peak, then switches at zero.
     *
     * @param part         of the last peak, above 0 and below 1
     * @param minimumVolts it never arms below this
     * @param decaySeconds after so long without pulses only the minimum counts
     */
    record Adaptive(double part, double minimumVolts, double decaySeconds) implements Arming {
        public Adaptive {
            Bounds.fraction("part of the last peak that arms", part, 0.001, 0.999);
            Bounds.check("least arming threshold", minimumVolts, new Range(1e-4, 10, Unit.VOLT));
            Bounds.check("time to fall back to the least threshold", decaySeconds, new Range(1e-4, 100, Unit.SECOND));
        }

        @Override
        public double leastPeakVolts() {
            return minimumVolts;
        }
    }
}
