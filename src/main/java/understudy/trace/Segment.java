package understudy.trace;

/**
 * What lies between two points of a circuit, and may be bad.
 *
 * @param kind what it is
 * @param name as people call it
 * @param odds how likely it is to be the bad one, against the others; above 0, any scale
 */
public record Segment(Kind kind, String name, double odds) {

    /** What a segment can be, with the odds it gets where nobody has an opinion: usual in the trade, not checked. */
    public enum Kind {
        CONNECTOR("connector", 6),
        SPLICE("splice", 4),
        WIRE("wire", 2);

        private final String word;
        private final double usualOdds;

        Kind(String word, double usualOdds) {
            this.word = word;
            this.usualOdds = usualOdds;
        }

        public String word() {
            return word;
        }

        public double usualOdds() {
            return usualOdds;
        }
    }
}
