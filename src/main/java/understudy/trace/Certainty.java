package understudy.trace;

/** Probabilities for a record, rounded so that nothing is ever called more certain than it is, nor certain at all. */
public final class Certainty {

    private static final double LEAST = 0.001;
    /** So that 0.97 is 97 % though it is a little less in binary. */
    private static final double HAIR = 1e-9;

    private Certainty() {}

    /** That something is so: rounded down; "97 %", "96.4 %", "more than 99.9 %". */
    public static String of(double probability) {
        return words(probability, Math.floor(1000 * probability + HAIR), Math.floor(100 * probability + HAIR));
    }

    /** That it is otherwise after all: rounded up; "3.1 %", "less than 0.1 %". */
    public static String doubt(double probability) {
        return words(1 - probability, Math.ceil(1000 * (1 - probability) - HAIR), Math.ceil(100 * (1 - probability) - HAIR));
    }

    private static String words(double probability, double perMille, double percent) {
        if (probability < LEAST) {
            return "less than 0.1 %";
        } else if (probability > 1 - LEAST) {
            return "more than 99.9 %";
        }
        boolean coarse = percent >= 10 && percent <= 90 || perMille % 10 == 0;
        return coarse ? Math.round(percent) + " %" : perMille / 10 + " %";
    }
}
