package understudy.refusal;

/** What a person can set, by its neutral name; each front end knows how it is set there. */
public enum Control {
    PATTERN("pattern"), SPEED("speed"), PROFILE("profile"), FAULT("fault"), DURATION("duration"), LEVEL("level"),
    FIT("fitting"), OUTPUTS("outputs"), CHANNELS("channels"), RIG("rig"), INPUT("module input"), RATE("sample rate"),
    DEVICE("audio output"), DESTINATION("destination"), LIMIT("limit"), REASON("reason"), READING("reading"), SPEEDS("speeds"), RESUME("going on"), TABLE("table");

    private final String label;

    Control(String label) {
        this.label = label;
    }

    /** For a sentence, "sample rate". */
    public String label() {
        return label;
    }
}
