package understudy.refusal;

/** What a person can set and a rule speaks of, by its neutral name; each front end knows how it is set there. */
public enum Control {
    PROFILE("profile"), FAULT("fault"), LEVEL("level"), FIT("fitting"), OUTPUTS("outputs"), CHANNELS("channels"), RIG("rig"),
    INPUT("module input"), RATE("sample rate"), READING("reading"), SPEEDS("speeds"), RESUME("going on"), TABLE("table"),
    DEVICE("audio device"), DESTINATION("destination"), SHOWN("displayed number"), FROM("lower end"), TO("upper end"), STEP("step"),
    LIMIT_NORMAL("limit for normal use"), LIMIT_FAULT("limit for a single fault"), OVERRIDE_LIMIT("raised limit"),
    BECAUSE("reason"), PAIRS("pairs"), FULL_SCALE("full scale"), INPUT_FULL_SCALE("full scale of the input"),
    CHECK("comparison"), LEARNED("learned scale"), VEHICLE("vehicle");

    private final String label;

    Control(String label) {
        this.label = label;
    }

    /** For a sentence, "sample rate". */
    public String label() {
        return label;
    }
}
