package understudy.reading;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import understudy.quantity.Dimension;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;

/** The units that module displays speak, with the step in which such displays usually count; the last is of the trade, unchecked. */
public enum DisplayUnit {
    KMH("km/h", Unit.KMH, 1, 1, 1000),
    MPH("mph", Unit.MPH, 1, 1, 600),
    RPM("rpm", Unit.RPM, 1, 1, 100_000),
    HERTZ("Hz", Unit.HERTZ, 1, 1, 200_000),
    GRAM_PER_SECOND("g/s", Unit.GRAM_PER_SECOND, 1, 0.1, 10_000),
    KILOPASCAL("kPa", Unit.PASCAL, 1000, 1, 100_000),
    INCH_OF_MERCURY("inHg", Unit.INCH_OF_MERCURY, 1, 0.1, 30_000);

    /** By symbol, for readers. */
    static final Map<String, DisplayUnit> BY_SYMBOL = Arrays.stream(values()).collect(
            Collectors.toMap(DisplayUnit::symbol, unit -> unit, (a, b) -> a, LinkedHashMap::new));

    /** What is less in any of these units is rounding of doubles. */
    private static final double NOTHING = 1e-9;

    private final String symbol;
    private final Unit unit;
    private final double sizeInBase;
    private final double usualStep;
    private final double most;

    DisplayUnit(String symbol, Unit unit, double times, double usualStep, double most) {
        this.symbol = symbol;
        this.unit = unit;
        this.sizeInBase = new Quantity(times, unit).base();
        this.usualStep = usualStep;
        this.most = most;
    }

    public String symbol() {
        return symbol;
    }

    Unit unit() {
        return unit;
    }

    public Dimension dimension() {
        return unit.dimension();
    }

    /** In this unit. */
    public double usualStep() {
        return usualStep;
    }

    /** The largest magnitude that any such display can mean, in this unit. */
    public double most() {
        return most;
    }

    /** From the dimension's base unit (km/h, rpm, Hz, g/s, Pa) to this one. */
    public double fromBase(double base) {
        return base / sizeInBase;
    }

    /** From this unit to the dimension's base unit. */
    public double toBase(double shown) {
        return shown * sizeInBase;
    }

    /** Exact, without a prefix, since a display has none either: "1200 g/s"; reads back as the same number. */
    public String exactly(double shown) {
        return plain(BigDecimal.valueOf(shown)) + " " + symbol;
    }

    /** For people: a tenth of the step is as much as a display can tell. */
    public String print(double shown, double step) {
        int decimals = Math.max(0, 1 - (int) Math.floor(Math.log10(step) + 1e-9));
        return plain(new BigDecimal(shown).setScale(decimals, RoundingMode.HALF_UP)) + " " + symbol;
    }

    /** For people: rounded to so many digits. */
    public String rounded(double shown, int digits) {
        double told = Math.abs(shown) < NOTHING ? 0 : shown;
        return plain(new BigDecimal(told).round(new MathContext(digits))) + " " + symbol;
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
