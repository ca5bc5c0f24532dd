package understudy.refusal;

/** Where something is wrong. */
public sealed interface Location {

    /** The matter itself says where, or it doesn't matter. */
    Location NOWHERE = new Named("");

    /** A thing by its name: a file, a device, a column of a table. */
    record Named(String name) implements Location {}

    /** What was given for a control. */
    record Of(Control control) implements Location {}

    /**
     * A character in a text.
     *
     * @param text   a file, or a control that takes a text
     * @param line   counted from 1
     * @param column counted from 1, in characters
     */
    record Line(Location text, int line, int column) implements Location {}

    static Location named(String name) {
        return new Named(name);
    }

    static Location of(Control control) {
        return new Of(control);
    }
}
