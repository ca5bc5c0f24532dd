package understudy.cli.terminal;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import understudy.bench.PlayedLast;
import understudy.refusal.Control;
import understudy.refusal.Deed;
import understudy.refusal.Refusal;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;

/** The command line's words for what the rooms below name as values: options for controls, commands for deeds. */
public final class CommandWords implements Wording {

    private static final String NAME = "understudy";
    /** The name where a command begins: at a line's beginning, behind blanks, a quote or a bracket, before a command's word. */
    private static final Pattern COMMAND = Pattern.compile("(?m)(?<=^|^ {1,8}|['`(:] ?|Usage: )understudy(?= [-a-z\\[A-Z])");
    private static final Wording WORDING = new CommandWords();

    /** How the program was called; one process is called one way. */
    private static volatile String program = NAME;

    private CommandWords() {}

    /** Sets how this process was called, so that a command can be typed as it is printed. */
    public static void calledAs(String typed) {
        program = quoted(typed);
    }

    /** How the program is called. */
    public static String program() {
        return program;
    }

    /** A command as it is typed, in the quotes in which a sentence names it. */
    public static String command(String words) {
        return "'" + program + " " + words + "'";
    }

    /** Text in which the program has its own name, with commands as they are typed here. */
    public static String asTyped(String text) {
        return program.equals(NAME) ? text : COMMAND.matcher(text).replaceAll(Matcher.quoteReplacement(program));
    }

    public static Wording wording() {
        return WORDING;
    }

    public static String text(Refusal refusal) {
        return refusal.text(WORDING);
    }

    public static String text(Remedy remedy) {
        return remedy.text(WORDING);
    }

    /** The options with which a pattern was played last. */
    public static String text(PlayedLast last) {
        StringBuilder options = new StringBuilder();
        last.rigs().forEach(rig -> options.append("--rig ").append(quoted(rig)).append(' '));
        last.inputs().forEach(input -> options.append("--input ").append(quoted(input)).append(' '));
        return options + (last.fit() ? "--fit " : "") + "--speed " + quoted(last.speed());
    }

    /** The option that sets this. */
    public static String option(Control control) {
        return switch (control) {
            case TABLE -> "--csv";
            case OUTPUTS -> "--output";
            case PAIRS -> "--learn";
            case DESTINATION -> "--to";
            default -> "--" + control.name().toLowerCase(Locale.ROOT).replace('_', '-');
        };
    }

    @Override
    public String setting(Control control, String value) {
        return option(control) + (value.isEmpty() ? "" : " " + quoted(value));
    }

    /** As it is typed: in quotes if the shell would take it apart. */
    public static String quoted(String value) {
        return value.matches("[\\w./%=+:@,-]+") ? value : inQuotes(value);
    }

    /** In quotes, so that a shell, an interactive one too, reads it as it was meant. */
    public static String inQuotes(String value) {
        return value.matches("[^\"\\\\$`!]*") ? '"' + value + '"' : "'" + value.replace("'", "'\\''") + "'";
    }

    /** A name where a command takes one, even if it looks like an option. */
    public static String named(String value) {
        return (value.startsWith("-") ? "-- " : "") + inQuotes(value);
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
            case CALIBRATE_BY_METER -> "calibrate --meter" + (subject.isEmpty() ? "" : " --rig " + quoted(subject));
            case CALIBRATE_BY_CABLE -> "calibrate --loopback";
            case EXPORT_JOB -> "jobs export";
        };
        return command(command);
    }
}
