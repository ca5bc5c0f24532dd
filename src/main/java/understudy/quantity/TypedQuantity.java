package understudy.quantity;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import understudy.refusal.Refused;

/**
 * A number as people type it, made into one as {@link Quantity#parse} reads it: "9.1k", "800RPM", "1,5 V", "50 kmh", "39,5". Files
 * are read strictly; this is for what is typed.
 *
 * <p>A number alone is in the unit that is asked for, but for farads, amperes and henries, of which nobody means a whole one. A comma is a decimal comma, unless three digits follow it: "1,500" could be
 * 1.5 or 1500, and is refused. Capitals do not matter, but for m and M before a unit, which are a factor of a thousand million apart.
 */
public final class TypedQuantity {

    private static final Pattern NUMBER = Pattern.compile("([-+\u2212]?)(\\d*(?:[.,]\\d*)?)\\s*(\\D.*)?");
    /** Nobody means a bare number in these: parts and currents come in thousandths and millionths of them. */
    private static final Set<Unit> WITH_PREFIX_ONLY = Set.of(Unit.FARAD, Unit.AMPERE, Unit.HENRY);
    private static final Map<String, String> SPELLINGS = Map.ofEntries(Map.entry("kmh", "km/h"), Map.entry("kph", "km/h"),
            Map.entry("km/hr", "km/h"), Map.entry("mi/h", "mph"), Map.entry("r/min", "rpm"), Map.entry("u/min", "rpm"),
            Map.entry("1/min", "rpm"), Map.entry("ohms", "ohm"), Map.entry("volt", "V"), Map.entry("volts", "V"), Map.entry("amp", "A"),
            Map.entry("amps", "A"), Map.entry("sec", "s"), Map.entry("seconds", "s"), Map.entry("minutes", "min"),
            Map.entry("percent", "%"), Map.entry("degrees", "deg"), Map.entry("hertz", "Hz"));

    private TypedQuantity() {}

    /**
     * The text as it is read strictly; what is no number is left as it is, for the strict reader to refuse.
     *
     * @param asked   unit of a number alone
     * @param allowed dimensions that the number may have
     * @throws Refused for a number that could be two
     */
    public static String plain(String typed, Unit asked, List<Dimension> allowed) {
        String text = typed.strip();
        Matcher matcher = NUMBER.matcher(text);
        if (!matcher.matches() || matcher.group(2).chars().noneMatch(Character::isDigit)) {
            return typed;
        }
        String number = matcher.group(1) + decimal(text, matcher.group(2));
        String unit = matcher.group(3) == null ? "" : matcher.group(3).strip();
        if (unit.isEmpty() && WITH_PREFIX_ONLY.contains(asked)) {
            return typed;
        } else if (unit.isEmpty()) {
            return number + " " + asked.symbol();
        }
        return prefixAlone(unit, asked).or(() -> Unit.spelled(unit).map(known -> unit))
                .or(() -> Optional.ofNullable(SPELLINGS.get(unit.toLowerCase(Locale.ROOT)))).or(() -> Unit.typed(unit, allowed))
                .map(known -> number + " " + known).orElse(number.equals(matcher.group(1) + matcher.group(2)) ? typed : number + " " + unit);
    }

    private static String decimal(String text, String number) {
        int comma = number.indexOf(',');
        if (comma >= 0 && number.length() - comma == 4 && comma > 0 && !number.startsWith("0")) {
            String whole = number.substring(0, comma);
            String part = number.substring(comma + 1);
            throw new Refused("\"" + text + "\" could be " + whole + "." + part + " or " + whole + part,
                    "write " + whole + "." + part + " or " + whole + part);
        }
        return number.replace(',', '.');
    }

    /** "9.1k" and "10K" of a part, as it is marked. */
    private static Optional<String> prefixAlone(String unit, Unit asked) {
        if (asked != Unit.OHM && asked != Unit.FARAD || unit.length() != 1) {
            return Optional.empty();
        }
        String prefix = unit.equals("K") ? "k" : unit;
        return unit.equalsIgnoreCase("R") && asked == Unit.OHM ? Optional.of(asked.symbol())
                : Unit.spelled(prefix + asked.symbol()).map(known -> prefix + asked.symbol());
    }
}
