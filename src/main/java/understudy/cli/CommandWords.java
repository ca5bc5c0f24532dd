package understudy.cli;

import java.util.Locale;
import understudy.refusal.Control;
import understudy.refusal.Deed;
import understudy.refusal.Refusal;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;

/** The command line's words for what the rooms below name as values: options for controls, commands for deeds. */
final class CommandWords implements Wording {

    private static final Wording WORDING = new CommandWords();

    private CommandWords() {}

    static Wording wording() {
        return WORDING;
    }

    static String text(Refusal refusal) {
        return refusal.text(WORDING);
    }

    static String text(Remedy remedy) {
        return remedy.text(WORDING);
    }

    /** The option that sets this. */
    static String option(Control control) {
        return switch (control) {
            case TABLE -> "--csv";
            case OUTPUTS -> "--output";
            case PAIRS -> "--learn";
            default -> "--" + control.name().toLowerCase(Locale.ROOT).replace('_', '-');
        };
    }

    @Override
    public String setting(Control control, String value) {
        return option(control) + (value.isEmpty() ? "" : " " + quoted(value));
    }

    /** As it is typed: in quotes if the shell would take it apart. */
    static String quoted(String value) {
        return value.matches("[\\w./%=+:@,-]+") ? value : inQuotes(value);
    }

    /** In double quotes, with what a shell would read there escaped. */
    static String inQuotes(String value) {
        return '"' + value.replaceAll("[\"\\\\$`]", "\\\\$0") + '"';
    }

    @Override
    public String deed(Deed deed, String subject) {
        String command = switch (deed) {
            case MAKE_RIG -> "rig make " + (subject.isEmpty() ? "NAME" : quoted(subject));
            case CHANGE_RIG -> "rig edit " + quoted(subject);
            case CHOOSE_DIVIDER -> "divider --rig " + quoted(subject) + " --input KIND --save";
            case LIST_INPUTS -> "input";
            case READ_CAUTIONS -> "cautions " + quoted(subject);
            case BEGIN_HUNT -> "trace CIRCUIT";
            case LIST_JOBS -> "jobs";
            case LIST_PATTERNS -> "patterns";
            case CALIBRATE_BY_METER -> "calibrate --meter";
            case CALIBRATE_BY_CABLE -> "calibrate --loopback";
            case EXPORT_JOB -> "jobs export";
        };
        return "'understudy " + command + "'";
    }
}
