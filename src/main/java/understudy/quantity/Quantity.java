package understudy.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import understudy.refusal.Refused;

/**
 * A number with its unit, as a person writes and reads it; the same in every locale. Written: a decimal number with a
 * point, then the unit, a space between them or none: "800 rpm", "2.5 V", "120 us", "45 km/h". Resistances and
 * capacitances may also be written as on the part (IEC 60062): "4k7", "2M2", "470R", "10k", "4n7". Sizes from 1e-15 to
 * 1e15 and zero.
 *
 * @param value in {@code unit}, without prefix
 * @param unit  as it was written
 */
public record Quantity(double value, Unit unit) {

    private static final Pattern NUMBER = Pattern.compile("([-+]?(?:\\d+(?:\\.\\d*)?|\\.\\d+))\\s*(.*)");
    private static final Pattern MARKING = Pattern.compile("(\\d+)([RpnumkMG])(\\d*)\\s*(ohm|Ω|F)?");
    private static final Pattern COMMA = Pattern.compile("[-+]?\\d[\\d,. ]*,\\d.*");
    private static final int MOST_LETTERS = 60;
    private static final double LEAST = 1e-15;
    private static final double MOST = 1e15;

    public Quantity {
        if (value != 0 && !(Math.abs(value) >= LEAST && Math.abs(value) <= MOST)) {
            throw new Refused("the number " + value + " " + unit.symbol() + " is absurd",
                    "sizes from 1e-15 to 1e15 can be handled");
        }
    }

    /** Reads a quantity of one of the {@code allowed} dimensions, or says what is wrong and what would be right. */
    public static Quantity parse(String written, Dimension... allowed) {
        List<Dimension> dimensions = List.of(allowed);
        String text = plain(written);
        if (text.length() > MOST_LETTERS) {
            throw new Refused("this is too long for a number with a unit", expected(dimensions));
        }
        Optional<Quantity> marking = marking(text, dimensions);
        if (marking.isPresent()) {
            return marking.get();
        }
        if (COMMA.matcher(text).matches()) {
            throw new Refused("\"" + written + "\" has a comma in the number",
                    "a number has a decimal point, and nothing between thousands, like 1.5 or 12000");
        }
        Matcher matcher = NUMBER.matcher(text);
        if (!matcher.matches()) {
            throw new Refused("\"" + written + "\" is not " + phrase(dimensions), expected(dimensions));
        }
        Unit.Spelled spelled = unit(written, matcher.group(1), matcher.group(2), dimensions);
        return of(new BigDecimal(matcher.group(1)).scaleByPowerOfTen(spelled.powerOfTen()), spelled.unit());
    }

    private static Quantity of(BigDecimal value, Unit unit) {
        return new Quantity(value.doubleValue(), unit);
    }

    /** One way to write what keyboards write in several. */
    private static String plain(String written) {
        return written.strip()
                .replace('\u00a0', ' ').replace('\u202f', ' ') // no-break spaces
                .replace('\u2212', '-') // minus sign
                .replace('\u00b5', 'u').replace('\u03bc', 'u') // micro sign, Greek mu
                .replace('\u2126', '\u03a9'); // ohm sign
    }

    private static Optional<Quantity> marking(String text, List<Dimension> allowed) {
        Matcher matcher = MARKING.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        for (Unit unit : List.of(Unit.OHM, Unit.FARAD)) {
            Optional<Integer> power = unit.markingPower(matcher.group(2).charAt(0));
            String symbol = matcher.group(4);
            boolean named = symbol == null || unit == (symbol.equals("F") ? Unit.FARAD : Unit.OHM);
            if (allowed.contains(unit.dimension()) && named && power.isPresent()) {
                BigDecimal number = new BigDecimal(matcher.group(1) + "." + matcher.group(3) + "0");
                return Optional.of(of(number.scaleByPowerOfTen(power.get()), unit));
            }
        }
        return Optional.empty();
    }

    private static Unit.Spelled unit(String written, String number, String symbol, List<Dimension> allowed) {
        if (symbol.isEmpty()) {
            throw new Refused("\"" + written + "\" has no unit", expected(allowed));
        }
        Unit.Spelled spelled = Unit.spelled(symbol).orElse(null);
        if (spelled != null && allowed.contains(spelled.unit().dimension())) {
            return spelled;
        }
        Optional<String> meant = Unit.despiteCapitals(symbol, allowed);
        if (meant.isPresent()) {
            throw new Refused("the unit \"" + symbol + "\" has the wrong capitals",
                    "write " + number + " " + meant.get());
        }
        throw spelled == null
                ? new Refused("the unit \"" + symbol + "\" is not known", expected(allowed))
                : new Refused("\"" + written + "\" is " + spelled.unit().dimension().phrase(), expected(allowed));
    }

    private static String phrase(List<Dimension> allowed) {
        String all = allowed.stream().map(Dimension::phrase).collect(Collectors.joining(", "));
        return all.replaceFirst(", ([^,]*)$", " or $1");
    }

    private static String expected(List<Dimension> allowed) {
        String units = Arrays.stream(Unit.values())
                .filter(unit -> allowed.contains(unit.dimension()))
                .map(Unit::symbol)
                .collect(Collectors.joining(", "));
        return "write " + phrase(allowed) + " like " + allowed.get(0).example()
                + (units.contains(",") ? " (units: " + units + ")" : "");
    }

    /** The value in the base unit of its dimension: volts, seconds, degrees, per cent, km/h, ohms ... */
    public double base() {
        return BigDecimal.valueOf(value).multiply(unit.size()).doubleValue();
    }

    /** Exact, with the prefix that suits it: reads back as the same number. */
    @Override
    public String toString() {
        return print(BigDecimal.valueOf(value));
    }

    /** For people: rounded to so many digits (1 or more), with the prefix that suits it. */
    public String rounded(int digits) {
        return print(BigDecimal.valueOf(value).round(new MathContext(digits)));
    }

    private String print(BigDecimal exact) {
        if (exact.signum() == 0) {
            return "0 " + unit.symbol();
        }
        List<Character> prefixes = unit.prefixesDownwards();
        char best = prefixes.get(prefixes.size() - 1);
        for (char prefix : prefixes) {
            if (exact.abs().compareTo(BigDecimal.ONE.scaleByPowerOfTen(Unit.prefixPower(prefix))) >= 0) {
                best = prefix;
                break;
            }
        }
        BigDecimal scaled = exact.scaleByPowerOfTen(-Unit.prefixPower(best)).stripTrailingZeros();
        return scaled.toPlainString() + " " + (best == ' ' ? "" : best) + unit.symbol();
    }
}
