package understudy.cli;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.Option;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Location;
import understudy.rig.Coupling;
import understudy.rig.Description;
import understudy.rig.Divider;
import understudy.rig.Lead;
import understudy.rig.Spread;

/** The options that say which parts are, or are to be, in the box. */
final class PartOptions {

    private static final Range OHMS = new Range(1, 10e6, Unit.OHM);
    private static final Range FARADS = new Range(1e-9, 1, Unit.FARAD);
    private static final Range LEAD_OHMS = new Range(0.001, 100_000, Unit.OHM);
    private static final String NUMBER = "(\\d+(?:\\.\\d+)?)";
    private static final Pattern RATIO = Pattern.compile(NUMBER + "\\s*:\\s*" + NUMBER + "(?:\\s+" + NUMBER + "\\s*%)?");
    private static final double RESISTOR_TOLERANCE = 0.01;
    private static final double CAPACITOR_TOLERANCE = 0.2;

    @Option(names = "--series", paramLabel = "OHMS", description = "The series resistor, like \"18k 1%%\".")
    private String series;

    @Option(names = "--shunt", paramLabel = "OHMS", description = "The shunt resistor across the clips, or none.")
    private String shunt;

    @Option(
            names = "--coupling",
            paramLabel = "PART",
            description = "straight; a capacitor like \"10 uF 20%%\"; or \"transformer, ratio: 1:2, inductance: 2 H, primary:"
                    + " 90 ohm, secondary: 95 ohm, carries: 1 V, down-to: 30 Hz\". The primary, with the inductance and the"
                    + " peak volts that the core carries, faces the jack; the ratio is turns at the jack to turns at the clips.")
    private String coupling;

    @Option(names = "--lead-ohms", paramLabel = "OHMS", description = "Resistance of each wire to the clips, any resistor in it"
            + " included (default: 0.1 ohm).")
    private String leadOhms;

    boolean namesResistors() {
        return series != null || shunt != null;
    }

    boolean given() {
        return namesResistors() || coupling != null || leadOhms != null;
    }

    /** The divider as given, the rest as in {@code otherwise}; empty when neither knows a series resistor. */
    Optional<Divider> divider(Optional<Divider> otherwise, Arguments given) {
        Optional<Spread> seriesOhms = series == null ? otherwise.map(Divider::seriesOhms)
                : given.part("--series", series, OHMS, otherwise.map(d -> d.seriesOhms().tolerance()).orElse(RESISTOR_TOLERANCE));
        Optional<Spread> shuntOhms = shunt == null ? otherwise.flatMap(Divider::shuntOhms)
                : shunt.strip().equals("none") ? Optional.empty()
                : given.part("--shunt", shunt, OHMS, RESISTOR_TOLERANCE);
        Coupling behind = coupling(given).or(() -> otherwise.map(Divider::coupling)).orElse(new Coupling.Direct());
        if (seriesOhms.isEmpty() && (shunt != null || coupling != null) && series == null) {
            given.problem("--series", "it is missing", "give the series resistor too: without one nothing limits the current");
        }
        return seriesOhms.flatMap(ohms -> given.attempt("--series", () -> new Divider(ohms, shuntOhms, behind)));
    }

    /** Empty when it was not given, or is wrong. */
    Optional<Coupling> coupling(Arguments given) {
        if (coupling == null) {
            return Optional.empty();
        } else if (coupling.strip().equals("straight")) {
            return Optional.of(new Coupling.Direct());
        } else if (!coupling.strip().startsWith("transformer")) {
            return given.part("--coupling", coupling, FARADS, CAPACITOR_TOLERANCE)
                    .flatMap(farads -> given.attempt("--coupling", () -> new Coupling.Capacitor(farads)));
        }
        Description d = Description.read(Location.named("--coupling"), coupling, given);
        Optional<Coupling> transformer = given.attempt("--coupling", () -> new Coupling.Transformer(
                d.text("ratio").map(written -> ratio(written, given)).orElse(Spread.exactly(1)), // one to one: sold for isolation
                d.part("inductance", new Range(0.001, 10_000, Unit.HENRY), new Spread(2, 0.3)),
                d.part("primary", OHMS, new Spread(100, 0.1)),
                d.part("secondary", OHMS, new Spread(100, 0.1)),
                d.number("carries", new Range(0.01, 60, Unit.VOLT), 1)
                        / (2 * Math.PI * d.number("down-to", new Range(1, 1000, Unit.HERTZ), 30))));
        transformer.ifPresent(whatever -> d.end());
        return transformer;
    }

    /** Turns at the jack, a colon, turns at the clips, and perhaps a tolerance: "1:2 3%". */
    private static Spread ratio(String written, Arguments given) {
        Matcher matcher = RATIO.matcher(written);
        double up = matcher.matches() ? Double.parseDouble(matcher.group(2)) / Double.parseDouble(matcher.group(1)) : Double.NaN;
        if (!(up >= Coupling.Transformer.LEAST_RATIO && up <= Coupling.Transformer.MOST_RATIO)) {
            given.problem("--coupling", "the ratio \"" + written + "\" will not do", "give turns at the jack to turns at the clips,"
                    + " like 1:2 or 5:1, with a tolerance like 1:2 3%; allowed are 100:1 to 1:100");
            return Spread.exactly(1);
        }
        double tolerance = matcher.group(3) == null ? 0 : Double.parseDouble(matcher.group(3)) / 100; // turns are counted
        return new Spread(up, tolerance);
    }

    Lead lead(Optional<Lead> otherwise, Arguments given) {
        Lead lead = otherwise.orElse(Lead.USUAL);
        return given.part("--lead-ohms", leadOhms, LEAD_OHMS, 0)
                .flatMap(ohms -> given.attempt("--lead-ohms", () -> new Lead(ohms, lead.farads()))).orElse(lead);
    }
}
