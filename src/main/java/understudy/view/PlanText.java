package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import understudy.text.Paragraph;
import understudy.text.Table;
import understudy.trace.Certainty;
import understudy.trace.Circuit;
import understudy.trace.EventWords;
import understudy.trace.PlanTree;
import understudy.trace.Suspect;

/** The plan of a circuit as a person reads it, before a panel is lifted. */
public final class PlanText {

    /** What is rarer than this would only fill the screen. */
    private static final double DRAWN = 0.01;

    private final Circuit circuit;
    private final PlanTree plan;
    private final List<String> lines = new ArrayList<>();

    private PlanText(Circuit circuit) {
        this.circuit = circuit;
        this.plan = circuit.plan();
    }

    public static List<String> lines(Circuit circuit) {
        PlanText text = new PlanText(circuit);
        text.write();
        return text.lines;
    }

    private void write() {
        lines.addAll(Paragraph.lines(circuit.title()));
        lines.add("");
        lines.addAll(Paragraph.lines("The plan, until one suspect has " + EventWords.percent(circuit.confidence())
                + ". Percentages are how often a branch is taken; what is rarer than " + EventWords.percent(DRAWN) + " is not drawn."));
        lines.add("");
        node(plan.root(), "", "");
        lines.add("");
        lines.addAll(new Table()
                .row("On average", "minutes")
                .row("by this plan", minutes(plan.minutes()))
                .row("end to end, from the sensor on", minutes(plan.endToEndMinutes()))
                .row("by plain halving", minutes(plan.halvingMinutes()))
                .lines());
    }

    private static String minutes(double minutes) {
        return String.format(Locale.ROOT, "%.1f", minutes);
    }

    private void node(PlanTree.Node node, String indent, String branch) {
        String words;
        boolean drawn = node.probability() >= DRAWN;
        if (drawn && node instanceof PlanTree.Injection inject) {
            words = "inject at " + circuit.points().get(inject.point()).name() + ", " + EventWords.minutes(inject.minutes());
        } else if (node instanceof PlanTree.Conviction convict) {
            words = "it is " + circuit.suspects().subList(convict.firstSuspect(), convict.lastSuspect() + 1).stream()
                    .map(Suspect::name).collect(Collectors.joining(" or ")) + " (" + Certainty.of(convict.right()) + ")";
        } else {
            words = "goes on";
        }
        lines.addAll(Paragraph.lines(indent + branch, indent + " ".repeat(branch.length()), words));
        if (drawn && node instanceof PlanTree.Injection inject) {
            below(inject.good(), indent, "good");
            below(inject.bad(), indent, "bad");
        }
    }

    private void below(PlanTree.Node node, String indent, String reading) {
        node(node, indent + "  ", reading + ", " + EventWords.percent(node.probability()) + ": ");
    }
}
