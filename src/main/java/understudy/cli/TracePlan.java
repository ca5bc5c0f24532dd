package understudy.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.trace.Circuit;
import understudy.trace.PlanTree;
import understudy.trace.Suspect;

/** The plan of a circuit as a person reads it, before a panel is lifted. */
final class TracePlan {

    private final Circuit circuit;
    private final PlanTree plan;
    private final List<String> lines = new ArrayList<>();

    private TracePlan(Circuit circuit) {
        this.circuit = circuit;
        this.plan = PlanTree.of(circuit);
    }

    static List<String> lines(Circuit circuit) {
        TracePlan text = new TracePlan(circuit);
        text.write();
        return text.lines;
    }

    private void write() {
        lines.addAll(Paragraph.lines(circuit.title()));
        lines.add("");
        lines.addAll(Paragraph.lines("The plan, until one suspect has " + TraceText.percent(circuit.confidence())
                + ". Percentages tell how often a branch is taken; what is rarer than 1 % is not drawn."));
        lines.add("");
        node(plan.root(), "", "");
        lines.add("");
        lines.addAll(new Table()
                .row("On average", "minutes")
                .row("by this plan", minutes(plan.minutes()))
                .row("end to end, from the sensor on", minutes(plan.endToEnd()))
                .row("by plain halving", minutes(plan.halving()))
                .lines());
        lines.addAll(Paragraph.lines("The right one is convicted in " + TraceText.percent(plan.right()) + " of such hunts."));
    }

    private static String minutes(double minutes) {
        return String.format(Locale.ROOT, "%.1f", minutes);
    }

    private void node(PlanTree.Node node, String indent, String branch) {
        String words;
        if (node instanceof PlanTree.Inject inject) {
            words = "inject at " + circuit.points().get(inject.point()).name() + ", " + TraceText.minutes(inject.minutes());
        } else if (node instanceof PlanTree.Convict convict) {
            words = "it is " + convict.suspects().stream().map(Suspect::name).collect(Collectors.joining(" or "))
                    + " (" + TraceText.percent(convict.certainty()) + ")";
        } else {
            words = "goes on";
        }
        lines.addAll(Paragraph.lines(indent + branch, indent + " ".repeat(branch.length()), words));
        if (node instanceof PlanTree.Inject inject) {
            below(inject.good(), indent, "good");
            below(inject.bad(), indent, "bad");
        }
    }

    private void below(Optional<PlanTree.Node> node, String indent, String reading) {
        node.ifPresent(next -> node(next, indent + "  ", reading + ", " + TraceText.percent(next.probability()) + ": "));
    }
}
