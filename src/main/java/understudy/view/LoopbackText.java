package understudy.view;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import understudy.audio.Device;
import understudy.calibrate.LoopbackFindings;
import understudy.calibrate.LoopbackFindings.Point;
import understudy.calibrate.TestedOutput;
import understudy.plot.LinePlot;
import understudy.quantity.NumberText;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Deed;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.rig.Amounts;
import understudy.rig.Spread;
import understudy.text.Paragraph;
import understudy.text.Table;

/** What a loopback calibration tells. */
public final class LoopbackText {

    /** Below, 24 bits say nothing. */
    private static final double LEAST_DB = -140;
    /** Smaller differences are the sweep's own, at the lowest frequencies. */
    private static final double LEAST_SPAN_DB = 2;
    private static final double LEAST_SPAN_DEG = 10;

    /** The findings for scripts: SI units, the unit in each name; null, or a number that is not finite, where nothing is known. */
    private record Findings(String method, Instant at, String device, int channel, String input, int inputChannel, int rateHz,
            double level, Optional<Spread> fullScaleVolts, double gain, double gainDb, double cornerHz, boolean inverted,
            double latencySeconds, double latencyUncertaintySeconds, double clockRatio, double clockUncertainty, double noisePart,
            double sinadDb, double enobBits, double thdDb, List<Double> harmonicsDb, List<Point> response,
            List<Trouble> interference) {}

    private record Trouble(String kind, String message) {}

    private final TestedOutput tested;
    private final Device input;
    private final int inputChannel;
    private final LoopbackFindings found;
    private final Optional<Spread> volts;
    private final Wording wording;

    /** @param volts full scale of the output, peak; none if nobody knows the input's */
    public LoopbackText(TestedOutput tested, Device input, int inputChannel, LoopbackFindings found, Optional<Spread> volts,
            Wording wording) {
        this.tested = tested;
        this.input = input;
        this.inputChannel = inputChannel;
        this.found = found;
        this.volts = volts;
        this.wording = wording;
    }

    public List<String> lines() {
        List<String> lines = new ArrayList<>(List.of(""));
        lines.addAll(Paragraph.lines(found.interference().isEmpty()
                ? "Nothing stands in the way: what is played comes back as it was given."
                : "Something stands in the way; it is named below."));
        lines.add("");
        Table table = new Table().row("Output and input together", "");
        volts.ifPresent(full -> table.row("full scale of the output", Amounts.peakAndRms(full) + ", within "
                + Amounts.tolerance(full)));
        lines.addAll(table.row("gain, of full scale", NumberText.signed(found.gainDb(), 3) + " dB")
                .row("AC-coupling corner", corner())
                .row("polarity", found.inverted() ? "inverted" : "upright")
                .row("latency, buffers included", latency())
                .row("clock, output against input", NumberText.signed((found.clockRatio() - 1) * 1e6, 4) + " ppm")
                .row("noise in silence", found.noisePart() == 0 ? "none at all"
                        : NumberText.decibels(20 * Math.log10(found.noisePart())) + " of full scale")
                .row("SINAD of the tone", NumberText.decibels(found.sinadDb()))
                .row("effective bits", String.format(Locale.ROOT, "%.1f", found.enobBits()))
                .row("THD of the tone", NumberText.decibels(found.thdDb()))
                .row("harmonics 2 to 5", String.join(", ", found.harmonicsDb().stream().map(NumberText::decibels).toList()))
                .lines());
        lines.add("");
        lines.addAll(Paragraph.lines((volts.isPresent()
                ? "Volts are as good as what was given for the input."
                : Remedy.of("A cable has no scale: for volts, ").perform(Deed.CALIBRATE_BY_METER, "").then(", or give ")
                        .set(Control.INPUT_FULL_SCALE).text(wording) + " here.")
                + " If it says inverted, either the output or the input inverts; a cable does not show which. Latency counts from when"
                + " the first sample was handed over; the system hands recorded sound over in portions, so it is not known"
                + " better than that."));
        return lines;
    }

    private String corner() {
        return found.cornerHz() < LoopbackFindings.LEAST_CORNER_HZ
                ? "none above " + NumberText.of(LoopbackFindings.LEAST_CORNER_HZ, Unit.HERTZ)
                : NumberText.of(found.cornerHz(), Unit.HERTZ, 3);
    }

    /** To the millisecond: when playing began is known no better than to a portion. */
    private String latency() {
        double most = Math.max(0, Math.rint(found.latencySeconds() * 1e3) / 1e3);
        double least = Math.max(0, Math.rint((found.latencySeconds() - found.latencyUncertaintySeconds()) * 1e3) / 1e3);
        return least == 0 ? "at most " + NumberText.of(Math.max(1e-3, most), Unit.SECOND)
                : "from " + NumberText.of(least, Unit.SECOND) + " to " + NumberText.of(most, Unit.SECOND);
    }

    public LinePlot plot() {
        List<Point> points = found.points();
        List<LinePlot.Panel> panels = new ArrayList<>();
        panels.add(panel("magnitude", "dB", LEAST_SPAN_DB, Point::magnitudeDb));
        panels.add(panel("phase, latency taken out", "deg", LEAST_SPAN_DEG, Point::phaseDeg));
        panels.add(panel("second harmonic, against the tone", "dB", 0, Point::secondDb));
        panels.add(panel("third harmonic, against the tone", "dB", 0, Point::thirdDb));
        return new LinePlot("Response of \"" + tested.output().device().label() + "\" into \"" + input.label() + "\"",
                "frequency, Hz", points.get(0).hz(), points.get(points.size() - 1).hz(), panels, true);
    }

    private LinePlot.Panel panel(String name, String unit, double leastSpan, ToDoubleFunction<Point> value) {
        return new LinePlot.Panel(name, unit, found.points().stream()
                .filter(point -> !Double.isNaN(value.applyAsDouble(point)))
                .map(point -> new LinePlot.Point(point.hz(), Math.max(LEAST_DB, value.applyAsDouble(point)))).toList(), leastSpan);
    }

    /** Those that are numbers. */
    public Map<String, Double> values() {
        Map<String, Double> values = new TreeMap<>(Map.of("gainDb", found.gainDb(), "inverted", found.inverted() ? 1.0 : 0.0,
                "cornerHz", Math.max(LoopbackFindings.LEAST_CORNER_HZ, found.cornerHz()), "latencySeconds", found.latencySeconds(),
                "clockRatio", found.clockRatio(), "sinadDb", found.sinadDb(), "thdDb", found.thdDb(),
                "noisePart", found.noisePart()));
        volts.ifPresent(full -> values.put("fullScaleVolts", full.nominal()));
        values.values().removeIf(value -> !Double.isFinite(value));
        return values;
    }

    /** For scripts. */
    public Object json(Instant at) {
        return new Findings("loopback", at, tested.output().device().label(), tested.channel() + 1, input.label(), inputChannel + 1,
                tested.output().rateHz(), tested.level(), volts, found.gain(), found.gainDb(),
                found.cornerHz() < LoopbackFindings.LEAST_CORNER_HZ ? Double.NaN : found.cornerHz(), found.inverted(),
                found.latencySeconds(), found.latencyUncertaintySeconds(), found.clockRatio(), found.clockUncertainty(),
                found.noisePart(), found.sinadDb(), found.enobBits(), found.thdDb(), found.harmonicsDb(), found.points(),
                found.interference().stream().map(one -> new Trouble(one.kind().name().toLowerCase(Locale.ROOT),
                        one.seen() + "; " + one.remedy().text(wording))).toList());
    }
}
