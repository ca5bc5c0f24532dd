package understudy.plot;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Refused;
import understudy.rig.Assessment;
import understudy.rig.Coupling;
import understudy.rig.Divider;
import understudy.rig.Spread;
import understudy.text.WholeFile;

/**
 * The box between audio jack and clips, drawn: as text, as a list of parts, and as SVG, which appears whole or not at
 * all. R1 series, R2 shunt, R3 R1's twin in the return of a pair; C1 and C2 capacitors, T1 a transformer.
 */
public final class WiringDrawing {

    private static final int TEXT_WIDTH = 54;

    private WiringDrawing() {}

    /**
     * The parts, a line each.
     *
     * @param pair         of pins, neither of them ground
     * @param ratingWatts  that each resistor should stand
     */
    public static List<String> parts(Divider divider, boolean pair, double ratingWatts) {
        List<String> lines = new ArrayList<>();
        String rating = ", " + (ratingWatts == Math.rint(ratingWatts) ? "" + (long) ratingWatts : "" + ratingWatts) + " W or more";
        boolean twin = pair && !(divider.coupling() instanceof Coupling.Transformer);
        lines.add((twin ? "R1, R3  series    " : "R1      series    ") + part(divider.seriesOhms(), Unit.OHM) + rating
                + (twin ? ", two alike" : ""));
        divider.shuntOhms().ifPresent(shunt -> lines.add("R2      shunt     " + part(shunt, Unit.OHM) + rating));
        if (divider.coupling() instanceof Coupling.Capacitor capacitor) {
            lines.add((twin ? "C1, C2  capacitor " : "C1      capacitor ") + part(capacitor.farads(), Unit.FARAD)
                    + ", 35 V or more" + (twin ? ", two alike" : "") + "; any + side to the clip");
        } else if (divider.coupling() instanceof Coupling.Transformer transformer) {
            lines.add("T1      isolation transformer " + transformer.turns() + "; at the jack "
                    + part(transformer.henries(), Unit.HENRY) + " and " + part(transformer.primaryOhms(), Unit.OHM)
                    + ", at the clips " + part(transformer.secondaryOhms(), Unit.OHM));
        }
        return lines;
    }

    private static String part(Spread spread, Unit unit) {
        return new Quantity(spread.nominal(), unit).rounded(3)
                + (spread.tolerance() == 0 ? "" : " " + new Quantity(100 * spread.tolerance(), Unit.PERCENT).rounded(2));
    }

    /** For a terminal, in plain characters. */
    public static List<String> text(Divider divider, boolean pair) {
        WiringPlan plan = new WiringPlan(divider, pair);
        StringBuilder upper = new StringBuilder("jack, tip    o");
        StringBuilder lower = new StringBuilder("jack, sleeve o");
        for (WiringPlan.Place place : plan.places()) {
            String top = place.upper().map(part -> "[" + part.name() + " " + part.value() + "]").orElse("");
            String bottom = place.lower().map(part -> "[" + part.name() + " " + part.value() + "]").orElse("");
            int width = Math.max(top.length(), bottom.length());
            upper.append("---").append(top).append("-".repeat(width - top.length()));
            lower.append("---").append(bottom).append("-".repeat(width - bottom.length()));
        }
        int wires = Math.max(3, TEXT_WIDTH - 4 - upper.length());
        List<String> lines = new ArrayList<>();
        if (plan.shunt().isPresent()) {
            upper.append("-".repeat(wires)).append("+");
            lower.append("-".repeat(wires)).append("+");
        }
        int at = upper.length() - 1;
        upper.append("---o  ").append(plan.upperClip());
        lower.append("---o  ").append(plan.lowerClip());
        lines.add(upper.toString());
        plan.shunt().ifPresent(part -> {
            String box = "[" + part.name() + " " + part.value() + "]";
            lines.add(" ".repeat(at) + "|");
            lines.add(" ".repeat(at - box.length() / 2) + box);
            lines.add(" ".repeat(at) + "|");
        });
        lines.add(lower.toString());
        lines.add(plan.note());
        return lines;
    }

    /** @throws IOException when the file can't be written */
    public static void writeSvg(Divider divider, boolean pair, Path file) throws IOException {
        WholeFile.write(WiringSvg.of(new WiringPlan(divider, pair)), file);
    }

    /** The box of an assessed rig; a failure is a matter of the set-up. */
    public static void writeOrRefuse(Assessment assessment, Path file) {
        try {
            writeSvg(assessment.rig().divider(), assessment.input().differential(), file);
        } catch (IOException e) {
            throw Refused.setup(file.toString(), "the drawing could not be written: " + e.getMessage(), "", e);
        }
    }
}
