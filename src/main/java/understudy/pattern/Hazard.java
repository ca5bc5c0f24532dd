package understudy.pattern;

/** Kinds of circuit that can hurt someone when a signal is put into them. */
public enum Hazard {
    CRANK("crank"),
    WHEEL_SPEED("wheel-speed"),
    ROAD_SPEED("road-speed");

    private final String key;

    Hazard(String key) {
        this.key = key;
    }

    /** How a pattern file names it. */
    public String key() {
        return key;
    }
}
