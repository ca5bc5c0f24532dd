package understudy.quantity;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The one table of units: symbol, dimension, size in the dimension's base unit, and the SI prefixes that the trade puts
 * before it. The first unit of each dimension is its base unit. Sizes are exact by definition, but for inHg, the
 * conventional inch of mercury at 0 degrees Celsius (BS 350).
 */
public enum Unit {
    RPM("rpm", Dimension.TURNING, "1", ""),
    HERTZ("Hz", Dimension.FREQUENCY, "1", "mkM"),
    KMH("km/h", Dimension.ROAD_SPEED, "1", ""),
    MPH("mph", Dimension.ROAD_SPEED, "1.609344", ""),
    DEGREE("deg", Dimension.ANGLE, "1", "", "°"),
    PERCENT("%", Dimension.PART, "1", ""),
    SECOND("s", Dimension.TIME, "1", "pnum"),
    MINUTE("min", Dimension.TIME, "60", ""),
    HOUR("h", Dimension.TIME, "3600", ""),
    METRE("m", Dimension.LENGTH, "1", "umck"),
    INCH("in", Dimension.LENGTH, "0.0254", ""),
    VOLT("V", Dimension.VOLTAGE, "1", "numk"),
    AMPERE("A", Dimension.CURRENT, "1", "pnum"),
    OHM("ohm", Dimension.RESISTANCE, "1", "mkMG", "Ω"),
    FARAD("F", Dimension.CAPACITANCE, "1", "pnum"),
    HENRY("H", Dimension.INDUCTANCE, "1", "num"),
    WATT("W", Dimension.POWER, "1", "numk"),
    PASCAL("Pa", Dimension.PRESSURE, "1", "kM"),
    INCH_OF_MERCURY("inHg", Dimension.PRESSURE, "3386.389", ""),
    GRAM_PER_SECOND("g/s", Dimension.MASS_FLOW, "1", "mk");

    private final String symbol;
    private final Dimension dimension;
    private final BigDecimal size;
    private final String prefixes;
    private final List<String> spellings;

    Unit(String symbol, Dimension dimension, String size, String prefixes, String... alsoWritten) {
        this.symbol = symbol;
        this.dimension = dimension;
        this.size = new BigDecimal(size);
        this.prefixes = prefixes;
        this.spellings = alsoWritten.length == 0 ? List.of(symbol) : List.of(symbol, alsoWritten[0]);
    }

    public String symbol() {
        return symbol;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** How many base units of its dimension it holds. */
    BigDecimal size() {
        return size;
    }

    /** A unit as it is spelled, with the power of ten of its prefix: "kHz" is HERTZ and 3. */
    record Spelled(Unit unit, int powerOfTen) {}

    private static final String PREFIX_LETTERS = "pnumckMG";
    private static final int[] PREFIX_POWERS = {-12, -9, -6, -3, -2, 3, 6, 9};
    private static final Map<String, Spelled> BY_SPELLING = spelledOut();

    static int powerOfTen(char prefix) {
        return PREFIX_POWERS[PREFIX_LETTERS.indexOf(prefix)];
    }

    private static Map<String, Spelled> spelledOut() {
        Map<String, Spelled> all = new LinkedHashMap<>();
        for (Unit unit : values()) {
            for (String spelling : unit.spellings) {
                put(all, spelling, new Spelled(unit, 0));
                for (char prefix : unit.prefixes.toCharArray()) {
                    put(all, prefix + spelling, new Spelled(unit, powerOfTen(prefix)));
                }
            }
        }
        return all;
    }

    private static void put(Map<String, Spelled> all, String spelling, Spelled spelled) {
        if (all.put(spelling, spelled) != null) {
            throw new IllegalStateException("two units are spelled " + spelling);
        }
    }

    static Optional<Spelled> spelled(String text) {
        return Optional.ofNullable(BY_SPELLING.get(text));
    }

    /** The spelling that differs from {@code text} only in capitals, if it can be but one of the allowed dimensions. */
    static Optional<String> despiteCapitals(String text, List<Dimension> allowed) {
        List<String> found = BY_SPELLING.keySet().stream()
                .filter(spelling -> spelling.equalsIgnoreCase(text))
                .filter(spelling -> allowed.contains(BY_SPELLING.get(spelling).unit().dimension()))
                .toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }

    /** What was meant by a unit typed in other capitals; m and M stay apart where they stand before a unit. */
    static Optional<String> typed(String text, List<Dimension> allowed) {
        List<String> found = BY_SPELLING.entrySet().stream().filter(known -> allowed.contains(known.getValue().unit().dimension()))
                .map(Map.Entry::getKey).filter(known -> known.equalsIgnoreCase(text)).toList();
        return found.size() == 1 ? Optional.of(found.get(0)).filter(known -> BY_SPELLING.get(known).powerOfTen() == 0
                || Character.toLowerCase(text.charAt(0)) != 'm' || known.charAt(0) == text.charAt(0)) : Optional.empty();
    }

    /** The letter of a component's marking (IEC 60062) that stands for the point: "4k7", "4R7", "2u2"; or none. */
    Optional<Integer> markingPower(char letter) {
        if (this == OHM && letter == 'R') {
            return Optional.of(0);
        }
        boolean marked = this == OHM || this == FARAD;
        return marked && prefixes.indexOf(letter) >= 0 ? Optional.of(powerOfTen(letter)) : Optional.empty();
    }

    /** Its prefixes by falling size, the bare unit among them as ' '. */
    List<Character> prefixesDownwards() {
        return Arrays.stream((" " + prefixes).split("")).map(s -> s.charAt(0))
                .filter(prefix -> prefix != 'c')
                .sorted((a, b) -> prefixPower(b) - prefixPower(a))
                .toList();
    }

    static int prefixPower(char prefixOrSpace) {
        return prefixOrSpace == ' ' ? 0 : powerOfTen(prefixOrSpace);
    }
}
