package understudy.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.rig.Amounts;
import understudy.rig.InputKind;
import understudy.rig.NamedInput;
import understudy.rig.UnknownInput;
import understudy.text.Paragraph;
import understudy.text.Table;

/** Kinds of module inputs, and what a meter's readings say of one. */
public final class InputText {

    private record Kind(String name, String words, boolean withinReach, Optional<String> source) {}

    private record Kinds(List<Kind> kinds) {}

    private record Found(double openVolts, double leastOpenVolts, double mostOpenVolts, double ohms, double leastOhms, double mostOhms,
            List<Kind> kinds, List<String> advice) {}

    private final UnknownInput found;

    public InputText(UnknownInput found) {
        this.found = found;
    }

    /** All kinds, a paragraph each; those last for which no rig can stand in. */
    public static List<String> kinds(Wording wording) {
        List<String> lines = new ArrayList<>(Paragraph.lines(Remedy.of("Kinds of input, for ").set(Control.INPUT)
                .then("; write what you know better behind the name, as in ")
                .set(Control.INPUT, "pulled-up-5-v, pull-up: 10k 5%, low: 1.5 V").then(":").text(wording)));
        Table beyond = new Table();
        for (InputKind kind : InputKind.values()) {
            if (kind.isOutOfReach()) {
                beyond.row("  " + kind.label(), kind.words());
                continue;
            }
            lines.add("");
            lines.add(kind.label());
            for (String text : List.of(kind.words() + ".", "Taken for: " + NamedInput.words(kind.usual()) + ".", kind.source())) {
                lines.addAll(Paragraph.lines("  ", "  ", text));
            }
        }
        lines.add("");
        lines.add("No rig of resistors can stand in for these:");
        lines.addAll(beyond.lines());
        return lines;
    }

    /** All kinds, for scripts. */
    public static Object kindsJson() {
        return new Kinds(Arrays.stream(InputKind.values()).map(InputText::kind).toList());
    }

    private static Kind kind(InputKind kind) {
        return new Kind(kind.label(), kind.words(), !kind.isOutOfReach(), kind.isOutOfReach() ? Optional.empty() : Optional.of(kind.source()));
    }

    public List<String> lines() {
        List<String> lines = new ArrayList<>(new Table()
                .row("volts of its own", between(found.openVolts(), found.leastOpenVolts(), found.mostOpenVolts(), Unit.VOLT))
                .row("resistance", Double.isNaN(found.ohms()) ? "not known"
                        : between(found.ohms(), found.leastOhms(), found.mostOhms(), Unit.OHM)).lines());
        lines.add("");
        lines.add(found.kinds().isEmpty() ? "No known kind fits." : "Kinds that fit, the likeliest first:");
        for (InputKind kind : found.kinds()) {
            lines.addAll(Paragraph.lines("  ", "    ", kind.label() + ": " + kind.words()
                    + (kind.isOutOfReach() ? ". No rig can stand in for its sensor." : ". " + kind.source())));
        }
        lines.add("");
        found.advice().forEach(advice -> lines.addAll(Paragraph.lines(advice)));
        return lines;
    }

    private static String between(double value, double least, double most, Unit unit) {
        return Amounts.print(value, unit) + ", between " + Amounts.print(least, unit) + " and "
                + (Double.isInfinite(most) ? "no upper end" : Amounts.print(most, unit));
    }

    /** For scripts; null where there is no number. */
    public Object json() {
        return new Found(found.openVolts(), found.leastOpenVolts(), found.mostOpenVolts(), found.ohms(), found.leastOhms(),
                found.mostOhms(), found.kinds().stream().map(InputText::kind).toList(), found.advice());
    }
}
