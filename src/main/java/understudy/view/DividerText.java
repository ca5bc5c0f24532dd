package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import understudy.plot.WiringDrawing;
import understudy.quantity.Unit;
import understudy.rig.Amounts;
import understudy.rig.Assessment;
import understudy.rig.Divider;
import understudy.rig.DividerSearch;
import understudy.rig.InputKind;
import understudy.rig.Levels;
import understudy.rig.Limits;
import understudy.rig.NamedInput;
import understudy.rig.PulledUpInput;
import understudy.rig.ReluctorInput;
import understudy.rig.State;
import understudy.rig.StateReport;
import understudy.store.RigWords;
import understudy.text.Json;
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
    private final Limits limits;

    public DividerText(DividerSearch.Design design, NamedInput input, boolean calibrated, Limits limits) {
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
                .row("source resistance", ohms(assessment.sourceOhms()) + " at signal frequencies, "
                        + (Double.isInfinite(assessment.directOhms()) ? "open" : ohms(assessment.directOhms())) + " for direct current")
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

    private static String ohms(double ohms) {
        return Amounts.print(ohms, Unit.OHM);
    }

    public Map<String, Object> json() {
        Divider divider = assessment.rig().divider();
        Levels levels = assessment.levels();
        return Json.map(
                "input", Json.map("kind", input.kind().label(), "words", NamedInput.words(input.input()),
                        "source", input.kind().source()),
                "output", assessment.rig().output(),
                "calibrated", calibrated,
                "divider", RigText.json(divider),
                "resistorRatingWatts", Json.number(watts()),
                "pinRestVolts", Json.number(levels.pinRestVolts()),
                "pinLowVolts", Json.number(levels.pinLowVolts()),
                "pinHighVolts", Json.number(levels.pinHighVolts()),
                "nominalMarginVolts", Json.number(assessment.nominalMarginVolts()),
                "worstMarginVolts", Json.number(assessment.marginVolts()),
                "sourceOhms", Json.number(assessment.sourceOhms()),
                "directOhms", Double.isInfinite(assessment.directOhms()) ? null : Json.number(assessment.directOhms()),
                "states", assessment.states().values().stream().map(this::json).collect(Collectors.toList()),
                "worstState", assessment.worstState(limits).name(),
                "limits", Json.map("normalAmps", Json.number(limits.normalAmps()), "faultAmps", Json.number(limits.faultAmps()),
                        "overrideReason", limits.override().orElse(null)),
                "cautions", cautions);
    }

    private Map<String, Object> json(StateReport report) {
        return Json.map("state", report.state().name(), "words", report.state().words(),
                "clipAmps", Json.number(report.clipAmps()), "rigAmps", Json.number(report.rigAmps()),
                "inputAmps", Json.number(report.inputAmps()), "judgedAmps", Json.number(report.judgedAmps()),
                "limitAmps", Json.number(limits.of(report.state())), "jackVolts", Json.number(report.jackVolts()),
                "jackAmps", Json.number(report.jackAmps()), "seriesWatts", Json.number(report.seriesWatts()),
                "shuntWatts", Json.number(report.shuntWatts()));
    }
}
