package understudy.reading;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import understudy.refusal.Refused;

/**
 * A radial tyre's size as moulded on its side wall, like 205/55R16: section width in mm, height of the side wall in per
 * cent of it, rim diameter in inches (ISO 4000-1). Letters before it (P, LT) and load and speed marks behind it are read over.
 *
 * @param widthMm       100 to 455
 * @param aspectPercent 20 to 100
 * @param rimInches     8 to 30
 */
public record TyreSize(int widthMm, int aspectPercent, double rimInches) {

    private static final Pattern WRITTEN = Pattern.compile(
            "(?i)(?:P|LT)?\\s*(\\d{3})\\s*/\\s*(\\d{2,3})\\s*Z?R\\s*(\\d{1,2}(?:\\.5)?)C?(?:\\s+\\S.*)?");
    private static final double MM_PER_INCH = 25.4;
    /** Rolling circumference over outside diameter, for radials; usual in the trade: 0.971 of the outside circumference. */
    private static final double ROLLS_PER_DIAMETER = 3.05;

    public TyreSize {
        if (!(widthMm >= 100 && widthMm <= 455 && aspectPercent >= 20 && aspectPercent <= 100
                && rimInches >= 8 && rimInches <= 30)) {
            throw new Refused("there is no tyre " + text(widthMm, aspectPercent, rimInches),
                    "widths go from 100 to 455 mm, heights from 20 to 100 %, rims from 8 to 30 inches");
        }
    }

    /** Reads a size, or says what one looks like. */
    public static TyreSize parse(String written) {
        Matcher matcher = WRITTEN.matcher(written.strip());
        if (!matcher.matches()) {
            throw new Refused("\"" + written + "\" is no size of a radial tyre",
                    "write it as on its side wall, like 205/55R16; for others measure what one turn rolls, and write that, like 1.927 m");
        }
        return new TyreSize(Integer.parseInt(matcher.group(1)), Integer.parseInt(matcher.group(2)),
                Double.parseDouble(matcher.group(3)));
    }

    public double outsideDiameterMetres() {
        return (MM_PER_INCH * rimInches + 2.0 * widthMm * aspectPercent / 100) / 1000;
    }

    /** Road travelled in one turn; load, pressure and wear change it by 1 to 3 % (usual in the trade, not checked). */
    public double rollsMetres() {
        return ROLLS_PER_DIAMETER * outsideDiameterMetres();
    }

    @Override
    public String toString() {
        return text(widthMm, aspectPercent, rimInches);
    }

    private static String text(int widthMm, int aspectPercent, double rimInches) {
        String rim = rimInches == Math.rint(rimInches) ? Integer.toString((int) rimInches) : Double.toString(rimInches);
        return widthMm + "/" + aspectPercent + "R" + rim;
    }
}
