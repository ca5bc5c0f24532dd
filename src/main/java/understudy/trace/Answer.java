package understudy.trace;

/**
 * What a person saw on the module's display.
 *
 * @param kind  what sort of thing was seen
 * @param value the number, in the unit of the circuit's reading; NaN unless it is a value
 */
public record Answer(Kind kind, double value) {

    /** What a display can do. */
    public enum Kind {
        VALUE("a value"),
        NOTHING("nothing"),
        ERRATIC("erratic"),
        COMES_AND_GOES("comes and goes when moved");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Answer {
        if ((kind == Kind.VALUE) != Double.isFinite(value)) {
            throw new IllegalArgumentException("a value needs a number, and nothing else has one");
        }
    }

    public static Answer value(double value) {
        return new Answer(Kind.VALUE, value);
    }

    public static Answer of(Kind kind) {
        return new Answer(kind, Double.NaN);
    }
}
