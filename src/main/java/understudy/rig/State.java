package understudy.rig;

/** What a rig on a pin may have to live through; each is looked at from before touching to long after. */
public enum State {
    /** Playing as planned. */
    NORMAL("normal use", false, Double.NaN),
    /** Another program's sound, or a stuck sample: from one end of full scale to the other. */
    FULL_SCALE("full scale, end to end", true, Double.NaN),
    /** The clips touch while it plays. */
    FIRST_TOUCH("first touch", true, Double.NaN),
    /** The output's own step when the device is powered. */
    POWER_UP("power-up pop", true, Double.NaN),
    SHORT_TO_GROUND("pin shorted to ground", true, 0),
    SHORT_TO_5_V("pin shorted to 5 V", true, 5),
    SHORT_TO_16_V("pin shorted to 16 V", true, 16),
    SHORT_TO_24_V("pin shorted to 24 V", true, 24);

    private final String words;
    private final boolean fault;
    private final double pinVolts;

    State(String words, boolean fault, double pinVolts) {
        this.words = words;
        this.fault = fault;
        this.pinVolts = pinVolts;
    }

    /** As it is said in a table or a message. */
    public String words() {
        return words;
    }

    /** Held to the limit for faults, all current through a clip counted. */
    public boolean isFault() {
        return fault;
    }

    double pinVolts() {
        return pinVolts;
    }
}
