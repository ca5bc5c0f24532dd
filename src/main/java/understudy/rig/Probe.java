package understudy.rig;

/** A voltage to be looked at. */
public enum Probe {
    /** At the audio jack, to its ground. */
    JACK,
    /** Between the module's two pins, or from the pin to ground. */
    PINS,
    /** What the comparator sees, from its reference. */
    COMPARATOR;

    double volts(Wiring wiring, double[] nodeVolts) {
        return switch (this) {
            case JACK -> nodeVolts[wiring.jack];
            case PINS -> nodeVolts[wiring.firstPin] - nodeVolts[wiring.secondPin];
            case COMPARATOR -> nodeVolts[wiring.firstSide] - nodeVolts[wiring.secondSide] - wiring.referenceVolts();
        };
    }
}
