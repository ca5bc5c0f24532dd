package understudy.refusal;

/** How a front end names controls and deeds. */
public interface Wording {

    /** In nobody's words: for logs and records. */
    Wording NEUTRAL = new Wording() {
        @Override
        public String setting(Control control, String value) {
            return control.label() + (value.isEmpty() ? "" : " " + value);
        }

        @Override
        public String deed(Deed deed, String subject) {
            return deed.label() + (subject.isEmpty() ? "" : " " + subject);
        }
    };

    /** A control, and what it is set to if that isn't empty. */
    String setting(Control control, String value);

    /** Something to do in the program, and with what if that isn't empty. */
    String deed(Deed deed, String subject);

    /** A location in this front end's words; empty for nowhere. */
    default String location(Location location) {
        if (location instanceof Location.Named named) {
            return named.name();
        } else if (location instanceof Location.Of of) {
            return setting(of.control(), "");
        }
        Location.Line line = (Location.Line) location;
        return location(line.text()) + ":" + line.line() + ":" + line.column();
    }
}
