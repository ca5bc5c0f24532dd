package understudy.reading;

import java.util.Optional;
import java.util.regex.Pattern;
import understudy.quantity.Dimension;
import understudy.quantity.Quantity;
import understudy.quantity.QuantityException;

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

    /** How many times the most that a good circuit shows is asked about: more than any common fault, less than a slip of a digit. */
    double IMPLAUSIBLE = 5;

    /** Reads a number without knowing what to expect. */
    static Displayed parse(String text, DisplayUnit unit) {
        return parse(text, unit, Optional.empty());
    }

    /** Reads a number and compares it with what is expected, if only to ask whether it was mistyped. */
    static Displayed parse(String text, DisplayUnit unit, Optional<Expected> expected) {
        try {
            return read(text.strip(), unit, expected);
        } catch (QuantityException e) {
            return new Refused(e.wrong(), e.right());
        }
    }

    private static Displayed read(String text, DisplayUnit unit, Optional<Expected> expected) {
        boolean bare = BARE.matcher(text).matches();
        boolean negative = unit.dimension() == Dimension.PRESSURE;
        double shown = ReadingReader.parse(bare ? text + " " + unit.symbol() : text, unit, negative ? -unit.most() : 0);
        boolean foreign = !bare && Quantity.parse(text, unit.dimension()).unit() != unit.unit();
        String converted = text + " is " + unit.rounded(shown, 4);
        if (foreign && expected.filter(right -> right.holds(shown)).isEmpty()) {
            return new Asked(converted + ": does the display really show " + text + ", and not " + unit.symbol() + "?", shown);
        }
        if (expected.isPresent() && implausible(shown, expected.get())) {
            return new Asked(question(shown, expected.get()), shown);
        }
        return new Value(shown, foreign ? converted : "");
    }

    private static boolean implausible(double shown, Expected expected) {
        return Math.abs(shown) > IMPLAUSIBLE * Math.max(Math.abs(expected.low()), Math.abs(expected.high()));
    }

    private static String question(double shown, Expected expected) {
        DisplayUnit unit = expected.unit();
        for (int slip : new int[] {10, 100, 1000}) {
            if (expected.holds(shown / slip)) {
                return "is it " + unit.rounded(shown, 6) + ", and not " + unit.rounded(shown / slip, 6) + "?";
            }
        }
        return unit.rounded(shown, 6) + " is far from " + unit.print(expected.value(), expected.step())
                + ", which a good circuit would show: is that what the display shows?";
    }

    /** A number alone. */
    Pattern BARE = Pattern.compile("[-+\u2212]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)");
}
