package understudy.refusal;

/** What a person can do in the program to get on; each front end knows how. */
public enum Deed {
    MAKE_RIG("make a rig"), CHANGE_RIG("change that rig"), CHOOSE_DIVIDER("choose a divider for"), LIST_INPUTS("list the inputs"),
    BEGIN_HUNT("begin a hunt"), LIST_JOBS("list the jobs"), EXPORT_JOB("export a job"),
    LIST_PATTERNS("list the patterns"), READ_CAUTIONS("read the cautions of"), CALIBRATE_BY_METER("calibrate with a meter"),
    CALIBRATE_BY_CABLE("calibrate with a cable");

    private final String label;

    Deed(String label) {
        this.label = label;
    }

    /** For a sentence, "make a rig". */
    public String label() {
        return label;
    }
}
