package understudy.view;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import understudy.quantity.Unit;
import understudy.refusal.Deed;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.rig.Amounts;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.Divider;
import understudy.rig.Lead;
import understudy.rig.Spread;
import understudy.store.Calibration;
import understudy.store.DeviceIdentity;
import understudy.store.NamedRig;
import understudy.store.RigWords;
import understudy.text.Table;
import understudy.text.Times;

/** A rig in words, and as JSON. */
public final class RigText {

    private record All(List<Object> rigs) {}

    private record Named(String name, Optional<DeviceIdentity> device, AudioOutput output, boolean calibrated, Optional<Object> divider,
            Lead lead, Limited limits, String notes, Instant created, Instant changed, List<Calibrated> calibrations) {}

    private record Limited(double normalAmps, double faultAmps, Optional<String> overrideReason) {}

    private record Calibrated(Instant at, String method, boolean good, Optional<AudioOutput> output, Map<String, String> conditions,
            Map<String, Double> values, String remark) {}

    private record Built(Spread seriesOhms, Optional<Spread> shuntOhms, Optional<Object> coupling) {}

    private record Capacitor(Spread capacitorFarads) {}

    private RigText() {}

    /** A row for each. */
    public static List<String> listed(List<NamedRig> rigs, Wording wording) {
        if (rigs.isEmpty()) {
            return List.of(Remedy.of("There is no rig yet; make one with ").perform(Deed.MAKE_RIG, "").then(".").text(wording));
        }
        Table table = new Table();
        rigs.forEach(rig -> table.row(rig.name(), RigWords.output(rig), RigWords.divider(rig)));
        return table.lines();
    }

    /** All of one, with its calibrations. */
    public static List<String> lines(NamedRig rig, List<Calibration> calibrations, Times times) {
        List<String> lines = new ArrayList<>(lines(rig, times));
        lines.addAll(history(calibrations, times));
        return lines;
    }

    /** Without its calibrations. */
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

    private static List<String> history(List<Calibration> calibrations, Times times) {
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

    /** A rig for scripts: SI units, the unit in each name; null where there is nothing. */
    public static Object json(NamedRig rig, List<Calibration> calibrations) {
        return new Named(rig.name(), rig.device(), rig.output(), rig.calibrated(), rig.divider().map(RigText::json), rig.lead(),
                new Limited(rig.limits().normalAmps(), rig.limits().faultAmps(), rig.limits().override()), rig.notes(), rig.created(),
                rig.changed(), calibrations.stream().map(RigText::json).toList());
    }

    /** Several rigs for scripts. */
    public static Object json(List<NamedRig> rigs, Function<NamedRig, List<Calibration>> calibrations) {
        return new All(rigs.stream().map(rig -> json(rig, calibrations.apply(rig))).toList());
    }

    private static Calibrated json(Calibration calibration) {
        return new Calibrated(calibration.at(), calibration.method(), calibration.good(), calibration.output(), calibration.conditions(),
                calibration.values(), calibration.remark());
    }

    /** A divider for scripts. */
    static Object json(Divider divider) {
        Optional<Object> coupling = Optional.empty();
        if (divider.coupling() instanceof Coupling.Capacitor capacitor) {
            coupling = Optional.of(new Capacitor(capacitor.farads()));
        } else if (divider.coupling() instanceof Coupling.Transformer transformer) {
            coupling = Optional.of(transformer);
        }
        return new Built(divider.seriesOhms(), divider.shuntOhms(), coupling);
    }
}
