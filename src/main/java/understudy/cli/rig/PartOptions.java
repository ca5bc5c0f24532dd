package understudy.cli.rig;

import java.util.Optional;
import picocli.CommandLine.Option;
import understudy.cli.terminal.Arguments;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Location;
import understudy.rig.Coupling;
import understudy.rig.CouplingText;
import understudy.rig.Divider;
import understudy.rig.Lead;
import understudy.rig.Spread;

/** The options that say which parts are, or are to be, in the box. */
final class PartOptions {

    private static final Range OHMS = new Range(1, 10e6, Unit.OHM);
    private static final Range LEAD_OHMS = new Range(0.001, 100_000, Unit.OHM);
    private static final double RESISTOR_TOLERANCE = 0.01;

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
        return coupling == null ? Optional.empty() : CouplingText.read(Location.named("--coupling"), coupling, given);
    }

    Lead lead(Optional<Lead> otherwise, Arguments given) {
        Lead lead = otherwise.orElse(Lead.USUAL);
        return given.part("--lead-ohms", leadOhms, LEAD_OHMS, 0)
                .flatMap(ohms -> given.attempt("--lead-ohms", () -> new Lead(ohms, lead.farads()))).orElse(lead);
    }
}
