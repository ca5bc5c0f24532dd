package understudy.reading;

import java.util.Optional;

/**
 * What a person typed as the number that the display shows: taken, asked about, or refused. A number without a unit is
 * in the display's own.
 */
public sealed interface Displayed {

    /**
     * To be taken.
     *
     * @param shown in the display's unit
     * @param note  what was made of it, to be said; empty when nothing was
     */
    record Value(double shown, String note) implements Displayed {}

    /**
     * So unlikely that it must be asked for once more.
     *
     * @param question to be answered with yes or no
     * @param shown    to be taken after a yes, in the display's unit
     */
    record Asked(String question, double shown) implements Displayed {}

    /** No number of this display. */
    record Refused(String wrong, String right) implements Displayed {}

    /** Reads a number without knowing what to expect. */
    static Displayed parse(String text, DisplayUnit unit) {
        return parse(text, unit, Optional.empty());
    }

    /** Reads a number and compares it with what is expected, if only to ask whether it was mistyped. */
    static Displayed parse(String text, DisplayUnit unit, Optional<Expected> expected) {
        return TypedNumber.read(text.strip(), unit, expected);
    }
}
