package understudy.rig;

/**
 * Where a signal between two levels ends up, in volts, once it has played for long: at the pins (between them, or from
 * ground) and at the comparator (from its reference). Low is the highest low, high the lowest high, over the duties.
 */
public record Levels(
        double pinRestVolts, double pinLowVolts, double pinHighVolts, double restVolts, double lowVolts, double highVolts) {

    /** How far the comparator's volts are beyond what makes it switch, on the worse side; negative: it does not. */
    public double marginVolts(Input input) {
        if (input instanceof PulledUpInput pulledUp) {
            return Math.min(pulledUp.lowBelowVolts() - lowVolts, highVolts - pulledUp.highAboveVolts());
        } else if (input instanceof ReluctorInput reluctor) {
            if (reluctor.arming() instanceof Arming.Hysteresis fixed) {
                return Math.min(highVolts - fixed.highVolts(), fixed.lowVolts() - lowVolts);
            }
            return Math.min(highVolts, -lowVolts) - reluctor.arming().leastPeakVolts();
        }
        return Math.min(highVolts - restVolts, restVolts - lowVolts) - ((ResistiveInput) input).leastPeakVolts();
    }
}
