package understudy.reading;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What pairs of injected frequency and displayed number tell: the display's scale, and what else is odd about it.
 *
 * @param unit     of the display
 * @param step     by which it counts, told or found, in its unit
 * @param fit      through the pairs that are {@code used}
 * @param used     in the order taken: without those where the display does not follow, and without outliers
 * @param findings in the order in which they were looked for
 */
public record Learned(DisplayUnit unit, double step, ScaleFit fit, List<Pair> used, List<DisplayTrait> findings) {

    public static final int MOST_PAIRS = 200;

    public Learned {
        used = List.copyOf(used);
        findings = List.copyOf(findings);
    }

    /**
     * @param pairs    in the order taken, 2 to {@value #MOST_PAIRS}, at two or more different frequencies, and not all
     *                 with the same number
     * @param toldStep of the display, where it is known
     */
    public static Learned of(List<Pair> pairs, DisplayUnit unit, OptionalDouble toldStep) {
        if (pairs.size() > MOST_PAIRS) {
            throw new IllegalArgumentException("at most " + MOST_PAIRS + " pairs, got " + pairs.size());
        }
        if (pairs.stream().mapToDouble(Pair::shown).distinct().count() < 2) {
            throw new IllegalArgumentException("a display that always shows the same has no scale");
        }
        return new Learning(pairs, toldStep.orElse(writtenStep(pairs))).learn(unit);
    }

    /** The last decimal place that any of the numbers uses, at most 1. */
    static double writtenStep(List<Pair> pairs) {
        int decimals = pairs.stream()
                .mapToInt(pair -> BigDecimal.valueOf(pair.shown()).stripTrailingZeros().scale()).max().orElse(0);
        return Math.pow(10, -Math.max(0, decimals));
    }

    /**
     * The same as a reading, to be kept: six digits of the line, with how far it may be wrong as the tolerance. That is a
     * tenth of a step at least: a module does not compute more closely than it has to.
     */
    public Reading reading() {
        double perHz = rounded(fit.factor().value(), 6);
        double offset = fit.throughZero().isPresent() ? 0 : rounded(fit.offset().value(), 6);
        return new Reading(Reading.Kind.LEARNED, unit, new Scale.Line(unit.toBase(perHz), unit.toBase(offset)),
                new Tolerance(0, rounded(Math.max(fit.away(), step / 10), 2)), step);
    }

    private static double rounded(double number, int digits) {
        return new BigDecimal(number).round(new MathContext(digits)).doubleValue();
    }

    static List<Pair> byFrequency(List<Pair> pairs) {
        return new ArrayList<>(pairs.stream().sorted(Comparator.comparingDouble(Pair::frequencyHz)).toList());
    }
}
