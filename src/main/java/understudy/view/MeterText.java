package understudy.view;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import understudy.calibrate.MeterFindings;
import understudy.calibrate.TestedOutput;
import understudy.quantity.NumberText;
import understudy.quantity.Unit;
import understudy.refusal.Deed;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.rig.Amounts;
import understudy.rig.Spread;
import understudy.text.Paragraph;
import understudy.text.Table;

/** What a calibration with a meter finds. */
public final class MeterText {

    /** The findings for scripts: SI units, the unit in each name; null where nothing is known. */
    private record Findings(String method, Instant at, String device, int channel, int rateHz, double level, double frequencyHz,
            double openVoltsRms, Optional<Double> loadOhms, Optional<Double> loadedVoltsRms, Spread fullScaleVolts,
            Optional<Spread> outputOhms) {}

    private final TestedOutput tested;
    private final double frequencyHz;
    private final double openVolts;
    private final Optional<MeterFindings.Loaded> loaded;
    private final MeterFindings found;
    private final Wording wording;

    /** @param openVolts rms, as the meter showed them */
    public MeterText(TestedOutput tested, double frequencyHz, double openVolts, Optional<MeterFindings.Loaded> loaded,
            MeterFindings found, Wording wording) {
        this.tested = tested;
        this.frequencyHz = frequencyHz;
        this.openVolts = openVolts;
        this.loaded = loaded;
        this.found = found;
        this.wording = wording;
    }

    public List<String> lines() {
        Spread full = found.fullScaleVolts();
        Table table = new Table().row("Found", "", "within").row("full scale", Amounts.peakAndRms(full), Amounts.tolerance(full));
        found.outputOhms().ifPresent(ohms -> table.row("output resistance", found.leastToTell()
                ? "at most " + NumberText.of(ohms.nominal() * (1 + ohms.tolerance()), Unit.OHM, 3)
                : NumberText.of(ohms.nominal(), Unit.OHM, 3), found.leastToTell() ? "-" : Amounts.tolerance(ohms)));
        List<String> lines = new ArrayList<>(List.of(""));
        lines.addAll(table.lines());
        lines.add("");
        if (found.leastToTell()) {
            lines.addAll(Paragraph.lines("The output resistance is too low to be measured with this load; a load of fewer ohms"
                    + " shows more, 32 ohm and more do no harm."));
        } else if (found.outputOhms().isEmpty()) {
            lines.addAll(Paragraph.lines("A second reading, with a known load, shows the output resistance too."));
        }
        lines.addAll(Paragraph.lines(Remedy.of("For polarity and response: ").perform(Deed.CALIBRATE_BY_CABLE, "").then(".").text(wording)));
        return lines;
    }

    /** Those that are compared with the next time, by name with the unit in it. */
    public Map<String, Double> values() {
        Map<String, Double> values = new TreeMap<>(Map.of("openVoltsRms", openVolts, "fullScaleVolts", found.fullScaleVolts().nominal()));
        found.outputOhms().ifPresent(ohms -> values.put("outputOhms", ohms.nominal()));
        return values;
    }

    /** For scripts. */
    public Object json(Instant at) {
        return new Findings("meter", at, tested.output().device().label(), tested.channel() + 1, tested.output().rateHz(), tested.level(),
                frequencyHz, openVolts, loaded.map(load -> load.ohms().nominal()), loaded.map(MeterFindings.Loaded::volts),
                found.fullScaleVolts(), found.outputOhms());
    }
}
