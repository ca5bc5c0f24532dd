package understudy.rig;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refusals;

/**
 * How a box is coupled, as a person writes it: "straight", a capacitor like "10 uF 20 %", or "transformer, ratio: 1:2, ..."
 * with what is known of it.
 */
public final class CouplingText {

    private static final Range OHMS = new Range(1, 10e6, Unit.OHM);
    private static final Range FARADS = new Range(1e-9, 1, Unit.FARAD);
    private static final String NUMBER = "(\\d+(?:\\.\\d+)?)";
    private static final Pattern RATIO = Pattern.compile(NUMBER + "\\s*:\\s*" + NUMBER + "(?:\\s+" + NUMBER + "\\s*%)?");
    private static final double CAPACITOR_TOLERANCE = 0.2;

    private CouplingText() {}

    /** Empty, and said why, when it is wrong. */
    public static Optional<Coupling> read(Location location, String written, Refusals given) {
        String text = written.strip();
        if (text.equals("straight")) {
            return Optional.of(new Coupling.Direct());
        } else if (!text.startsWith("transformer")) {
            return given.attempt(location, () -> new Coupling.Capacitor(Spread.parse(written, FARADS, CAPACITOR_TOLERANCE)));
        }
        Description d = Description.read(location, written, given);
        Optional<Coupling> transformer = given.attempt(location, () -> new Coupling.Transformer(
                d.text("ratio").map(ratio -> ratio(location, ratio, given)).orElse(Spread.exactly(1)), // one to one: sold for isolation
                d.part("inductance", new Range(0.001, 10_000, Unit.HENRY), new Spread(2, 0.3)),
                d.part("primary", OHMS, new Spread(100, 0.1)),
                d.part("secondary", OHMS, new Spread(100, 0.1)),
                d.number("carries", new Range(0.01, 60, Unit.VOLT), 1)
                        / (2 * Math.PI * d.number("down-to", new Range(1, 1000, Unit.HERTZ), 30))));
        transformer.ifPresent(whatever -> d.end());
        return transformer;
    }

    /** Turns at the jack, a colon, turns at the clips, and perhaps a tolerance: "1:2 3%". */
    private static Spread ratio(Location location, String written, Refusals given) {
        Matcher matcher = RATIO.matcher(written);
        double up = matcher.matches() ? Double.parseDouble(matcher.group(2)) / Double.parseDouble(matcher.group(1)) : Double.NaN;
        if (!(up >= Coupling.Transformer.LEAST_RATIO && up <= Coupling.Transformer.MOST_RATIO)) {
            given.add(new Refusal(location, "the ratio \"" + written + "\" will not do", "give turns at the jack to turns at the clips,"
                    + " like 1:2 or 5:1, with a tolerance like 1:2 3%; allowed are 100:1 to 1:100"));
            return Spread.exactly(1);
        }
        double tolerance = matcher.group(3) == null ? 0 : Double.parseDouble(matcher.group(3)) / 100; // turns are counted
        return new Spread(up, tolerance);
    }
}
