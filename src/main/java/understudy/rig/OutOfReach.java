package understudy.rig;

import understudy.quantity.Unit;
import understudy.refusal.Refused;

/** What no rig of resistors, capacitors and a transformer can stand in for, and why. */
public enum OutOfReach {
    TWO_WIRE_CURRENT("a two-wire active sensor",
            "the module feeds it 8 to 12 V and reads its levels from the current it draws, 7 mA against 14 mA; "
                    + "an audio output draws no steady current"),
    PULLED_UP_8_TO_12_V("an input pulled up to 8 V or more",
            "an audio output's few volts can't pull it across its thresholds"),
    DIRECT_VOLTAGE("a sensor that gives its value as a steady voltage",
            "an audio output passes no steady voltage"),
    DIGITAL_PROTOCOL("a sensor that sends digital messages",
            "the module expects data with checks, not a wave"),
    RESOLVER("a resolver",
            "its signals are the module's own excitation, turned by angle; a rig can't follow that");

    private static final double LEAST_OUT_OF_REACH_VOLTS = 8;

    private final String what;
    private final String reason;

    OutOfReach(String what, String reason) {
        this.what = what;
        this.reason = reason;
    }

    public String what() {
        return what;
    }

    public String reason() {
        return reason;
    }

    /** Says so. */
    public Refused refusal() {
        return new Refused("no passive rig can stand in for " + what + ": " + reason,
                "test this circuit with the sensor's own maker's method");
    }

    /** Refuses an input that can be recognised as one of these. */
    static void check(Input input) {
        if (input instanceof PulledUpInput pulledUp && pulledUp.supplyVolts().nominal() >= LEAST_OUT_OF_REACH_VOLTS) {
            throw new Refused("no passive rig can stand in for " + PULLED_UP_8_TO_12_V.what + " (this one: "
                    + Bounds.print(pulledUp.supplyVolts().nominal(), Unit.VOLT) + "): " + PULLED_UP_8_TO_12_V.reason,
                    "test this circuit by other means");
        }
    }
}
