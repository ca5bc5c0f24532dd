package understudy.reading;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import understudy.quantity.Dimension;
import understudy.quantity.Quantity;
import understudy.quantity.TypedQuantity;
import understudy.refusal.Refused;

/** Makes a displayed reading of what a person typed. */
final class TypedNumber {

    /** A number alone. */
    private static final Pattern BARE = Pattern.compile("[-+\u2212]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+)");
    /** How many times the most that a good circuit shows is asked about: more than any usual fault, less than a slip of a digit. */
    private static final double IMPLAUSIBLE = 5;

    private TypedNumber() {}

    static Displayed read(String text, DisplayUnit unit, Optional<Expected> expected) {
        try {
            return number(text, unit, expected);
        } catch (Refused e) {
            return new Displayed.Refused(e.wrong(), e.right());
        }
    }

    private static Displayed number(String text, DisplayUnit unit, Optional<Expected> expected) {
        if (text.isEmpty()) {
            throw new Refused("nothing was given", "write the number that the display shows, like 43 " + unit.symbol());
        }
        boolean bare = BARE.matcher(text).matches();
        String plain = TypedQuantity.plain(bare ? text + " " + unit.symbol() : text, unit.unit(), List.of(unit.dimension()));
        boolean negative = unit.dimension() == Dimension.PRESSURE;
        double shown = ReadingReader.parse(plain, unit, negative ? -unit.most() : 0);
        boolean foreign = !bare && Quantity.parse(plain, unit.dimension()).unit() != unit.unit();
        String converted = text + " is " + unit.rounded(shown, 4);
        if (foreign && expected.filter(right -> right.holds(shown)).isEmpty()) {
            return new Displayed.Asked(converted + ": does the display really show " + text + ", and not " + unit.symbol() + "?", shown);
        }
        if (expected.isPresent() && implausible(shown, expected.get())) {
            return new Displayed.Asked(question(shown, expected.get()), shown);
        }
        return new Displayed.Value(shown, foreign ? converted : "");
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
}
