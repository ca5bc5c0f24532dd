package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import understudy.plot.WiringDrawing;
import understudy.quantity.Unit;
import understudy.rig.Amounts;
import understudy.rig.Assessment;
import understudy.rig.AudioOutput;
import understudy.rig.CurrentLimits;
import understudy.rig.DividerSearch;
import understudy.rig.InputKind;
import understudy.rig.Levels;
import understudy.rig.NamedInput;
import understudy.rig.PulledUpInput;
import understudy.rig.ReluctorInput;
import understudy.rig.State;
import understudy.rig.StateReport;
import understudy.store.RigWords;
import understudy.text.Paragraph;
import understudy.text.Table;

/** What is to be known of a divider before it is built. */
public final class DividerText {

    /** Twice what a resistor has to stand, and half a watt at least, so that it stays cool. */
    private static final double[] RATINGS_WATTS = {0.5, 1, 2, 5, 10};

    private final Assessment assessment;
    private final List<String> cautions;
    private final NamedInput input;
    private final boolean calibrated;
    private final CurrentLimits limits;

    public DividerText(DividerSearch.Design design, NamedInput input, boolean calibrated, CurrentLimits limits) {
        this.assessment = design.assessment();
        this.cautions = design.cautions();
        this.input = input;
        this.calibrated = calibrated;
        this.limits = limits;
    }

    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        InputKind kind = input.kind();
        lines.addAll(Paragraph.lines("input: ", "  ", kind.label() + ", " + NamedInput.words(input.input())));
        lines.addAll(Paragraph.lines("  ", "  ", kind.source()));
        lines.addAll(Paragraph.lines("output: ", "  ", RigWords.output(assessment.rig().output(), calibrated) + "; "
                + RigWords.outputParts(assessment.rig().output())));
        lines.add("");
        lines.addAll(WiringDrawing.parts(assessment.rig().divider(), assessment.input().differential(), watts()));
        lines.add("");
        lines.addAll(WiringDrawing.text(assessment.rig().divider(), assessment.input().differential()));
        lines.add("");
        lines.addAll(volts());
        lines.add("");
        lines.addAll(states());
        lines.add("");
        lines.addAll(Paragraph.lines("Limits: ", "  ", limits.words() + "."));
        State worst = assessment.worstState(limits);
        lines.addAll(Paragraph.lines("Worst: ", "  ", worst.words() + ", "
                + Amounts.print(assessment.states().get(worst).judgedAmps(), Unit.AMPERE) + " of "
                + Amounts.print(limits.of(worst), Unit.AMPERE) + "."));
        lines.addAll(sinkNote());
        for (String caution : cautions) {
            lines.addAll(Paragraph.lines("Caution: ", "  ", caution));
        }
        if (assessment.marginVolts() <= 0) {
            lines.addAll(Paragraph.lines("Caution: ", "  ", "it keeps the limits, but this input may not switch: over all"
                    + " tolerances it lacks " + Amounts.print(-assessment.marginVolts(), Unit.VOLT) + "."));
        }
        return lines;
    }

    private double watts() {
        double most = assessment.states().values().stream()
                .flatMapToDouble(state -> DoubleStream.of(state.seriesWatts(), state.shuntWatts())).max().orElse(0);
        return DoubleStream.of(RATINGS_WATTS).filter(rating -> rating >= 2 * most).findFirst().orElse(2 * most);
    }

    private List<String> volts() {
        Levels levels = assessment.levels();
        String pins = assessment.input().differential() ? "between the pins" : "at the pin";
        return new Table()
                .row(pins, "rests at " + volts(levels.pinRestVolts()) + ", full scale swings from " + volts(levels.pinLowVolts())
                        + " to " + volts(levels.pinHighVolts()))
                .row("to spare", volts(assessment.nominalMarginVolts()) + "; " + volts(assessment.marginVolts())
                        + " with every part at its worst")
                .row("source resistance", Amounts.print(assessment.sourceOhms(), Unit.OHM) + " at signal frequencies, "
                        + (Double.isInfinite(assessment.directOhms()) ? "open" : Amounts.print(assessment.directOhms(), Unit.OHM)) + " for direct current")
                .lines();
    }

    private List<String> states() {
        Table table = new Table().row("at worst", "through", "of its", "back on", "", "heat in", "heat in");
        table.row("", "a clip", "limit", "the jack", "", "series", "shunt");
        for (StateReport report : assessment.states().values()) {
            table.row(report.state().words(), amps(report.judgedAmps()),
                    Math.round(100 * report.judgedAmps() / limits.of(report.state())) + " %", volts(report.jackVolts()),
                    amps(report.jackAmps()), watts(report.seriesWatts()), watts(report.shuntWatts()));
        }
        return table.lines();
    }

    /** The input's own current, which is no fault of the rig's, and is held to what its sensor would sink. */
    private List<String> sinkNote() {
        double amps = assessment.states().get(State.NORMAL).inputAmps();
        boolean drives = input.input() instanceof PulledUpInput
                || input.input() instanceof ReluctorInput reluctor && reluctor.biasVolts().nominal() != 0;
        return !drives || amps < 1e-9 ? List.of() : Paragraph.lines("The input itself drives " + amps(amps)
                + " back through the shunt; its sensor would have to sink as much or more.");
    }

    private static String volts(double volts) {
        return Amounts.print(Math.abs(volts) < 1e-6 ? 0 : volts, Unit.VOLT);
    }

    private static String amps(double amps) {
        return Amounts.print(Math.abs(amps) < 1e-9 ? 0 : amps, Unit.AMPERE);
    }

    private static String watts(double watts) {
        return watts < 1e-3 ? "< 1 mW" : Amounts.print(watts, Unit.WATT);
    }

    private record Chosen(Kind input, AudioOutput output, boolean calibrated, Object divider, double resistorRatingWatts, double pinRestVolts,
            double pinLowVolts, double pinHighVolts, double nominalMarginVolts, double worstMarginVolts, double sourceOhms,
            double directOhms, List<Stated> states, String worstState, Limited limits, List<String> cautions) {}

    private record Kind(String kind, String words, String source) {}

    private record Limited(double normalAmps, double faultAmps, Optional<String> overrideReason) {}

    private record Stated(String state, String words, double clipAmps, double rigAmps, double inputAmps, double judgedAmps,
            double limitAmps, double jackVolts, double jackAmps, double seriesWatts, double shuntWatts) {}

    /** For scripts, in SI units; null for a resistance without end. */
    public Object json() {
        Levels levels = assessment.levels();
        return new Chosen(new Kind(input.kind().label(), NamedInput.words(input.input()), input.kind().source()),
                assessment.rig().output(), calibrated, RigText.json(assessment.rig().divider()), watts(), levels.pinRestVolts(),
                levels.pinLowVolts(), levels.pinHighVolts(), assessment.nominalMarginVolts(), assessment.marginVolts(),
                assessment.sourceOhms(), assessment.directOhms(), assessment.states().values().stream().map(this::state).toList(),
                assessment.worstState(limits).name(),
                new Limited(limits.normalAmps(), limits.faultAmps(), limits.override()), cautions);
    }

    private Stated state(StateReport report) {
        return new Stated(report.state().name(), report.state().words(), report.clipAmps(), report.rigAmps(), report.inputAmps(),
                report.judgedAmps(), limits.of(report.state()), report.jackVolts(), report.jackAmps(), report.seriesWatts(),
                report.shuntWatts());
    }
}
