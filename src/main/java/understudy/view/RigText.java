package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import understudy.quantity.Unit;
import understudy.rig.Amounts;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.Divider;
import understudy.rig.Spread;
import understudy.store.Calibration;
import understudy.store.DeviceIdentity;
import understudy.store.NamedRig;
import understudy.store.RigWords;
import understudy.text.Json;
import understudy.text.Table;
import understudy.text.Times;

/** A rig in words, and as JSON. */
public final class RigText {

    private RigText() {}

    public static List<String> lines(NamedRig rig, Times times) {
        Table table = new Table()
                .row("rig", rig.name())
                .row("device", rig.device().map(DeviceIdentity::label).orElse("any"))
                .row("output", RigWords.output(rig))
                .row("", RigWords.outputParts(rig.output()))
                .row("divider", RigWords.divider(rig))
                .row("lead", Amounts.print(rig.lead().ohms(), Unit.OHM) + " each wire")
                .row("limits", rig.limits().words());
        if (!rig.notes().isEmpty()) {
            table.row("notes", rig.notes());
        }
        table.row("made", times.withZone(rig.created()) + (rig.changed().equals(rig.created()) ? "" : ", changed " + times.withZone(rig.changed())));
        return table.lines();
    }

    public static List<String> history(List<Calibration> calibrations, Times times) {
        if (calibrations.isEmpty()) {
            return List.of("never calibrated");
        }
        List<String> lines = new ArrayList<>(List.of("calibrations, the latest first:"));
        Table table = new Table();
        for (Calibration calibration : calibrations) {
            table.row("  " + times.withZone(calibration.at()), calibration.method(), calibration.output()
                    .map(output -> "full scale " + Amounts.print(output.fullScaleVolts(), Unit.VOLT) + ", "
                            + Amounts.print(output.outputOhms(), Unit.OHM)).orElse("failed"), calibration.remark());
        }
        lines.addAll(table.lines());
        return lines;
    }

    public static Map<String, Object> json(NamedRig rig, List<Calibration> calibrations) {
        return Json.map(
                "name", rig.name(),
                "device", rig.device().map(device -> (Object) Json.map("name", device.name(), "description", device.description(),
                        "vendor", device.vendor(), "ordinal", device.ordinal())).orElse(null),
                "output", json(rig.output()),
                "calibrated", rig.calibrated(),
                "divider", rig.divider().map(RigText::json).orElse(null),
                "lead", Json.map("ohms", json(rig.lead().ohms()), "farads", Json.number(rig.lead().farads())),
                "limits", Json.map("normalAmps", Json.number(rig.limits().normalAmps()),
                        "faultAmps", Json.number(rig.limits().faultAmps()),
                        "overrideReason", rig.limits().override().orElse(null)),
                "notes", rig.notes(),
                "created", rig.created().toString(),
                "changed", rig.changed().toString(),
                "calibrations", calibrations.stream().map(RigText::json).toList());
    }

    private static Map<String, Object> json(Calibration calibration) {
        Map<String, Object> values = new TreeMap<>();
        calibration.values().forEach((name, value) -> values.put(name, Json.number(value)));
        return Json.map("at", calibration.at().toString(), "method", calibration.method(), "good", calibration.good(),
                "output", calibration.output().map(RigText::json).orElse(null), "conditions", calibration.conditions(),
                "values", values, "remark", calibration.remark());
    }

    public static Map<String, Object> json(AudioOutput output) {
        return Json.map("fullScaleVolts", json(output.fullScaleVolts()), "outputOhms", json(output.outputOhms()),
                "couplingFarads", json(output.couplingFarads()), "inverted", output.inverted(),
                "popVolts", Json.number(output.popVolts()));
    }

    public static Map<String, Object> json(Divider divider) {
        Object coupling = null;
        if (divider.coupling() instanceof Coupling.Capacitor capacitor) {
            coupling = Json.map("capacitorFarads", json(capacitor.farads()));
        } else if (divider.coupling() instanceof Coupling.Transformer t) {
            coupling = Json.map("ratio", json(t.ratio()), "henries", json(t.henries()), "primaryOhms", json(t.primaryOhms()),
                    "secondaryOhms", json(t.secondaryOhms()), "mostVoltSeconds", Json.number(t.mostVoltSeconds()));
        }
        return Json.map("seriesOhms", json(divider.seriesOhms()), "shuntOhms", json(divider.shuntOhms()), "coupling", coupling);
    }

    private static Object json(Optional<Spread> spread) {
        return spread.map(RigText::json).orElse(null);
    }

    private static Map<String, Object> json(Spread spread) {
        return Json.map("nominal", Json.number(spread.nominal()), "tolerance", Json.number(spread.tolerance()));
    }
}
