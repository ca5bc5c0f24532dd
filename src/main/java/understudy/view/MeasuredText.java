package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import understudy.audio.Recorded;
import understudy.measure.DetectedWheel;
import understudy.measure.EdgeTiming;
import understudy.measure.InputFault;
import understudy.measure.PatternTiming;
import understudy.measure.Pulses;
import understudy.measure.SignalReport;
import understudy.measure.Spectrum;
import understudy.measure.Statistics;
import understudy.measure.ToneQuality;
import understudy.plot.LinePlot;
import understudy.quantity.NumberText;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.text.Paragraph;
import understudy.text.Table;

/** What {@code measure} tells: plain words first, then the numbers. */
public final class MeasuredText {

    private static final int LINES_TOLD = 6;
    /** A speed that changes by less from the first to the last edge is called steady. */
    private static final double STEADY_PART = 1e-4;

    private final MeasuredChannel asked;
    private final SignalReport report;
    private final List<InputFault> faults;
    private final Optional<PatternTiming> timing;
    private final Wording wording;

    public MeasuredText(MeasuredChannel asked, SignalReport report, List<InputFault> faults, Optional<PatternTiming> timing,
            Wording wording) {
        this.asked = asked;
        this.report = report;
        this.faults = faults;
        this.timing = timing;
        this.wording = wording;
    }

    public List<String> lines() {
        Recorded recorded = asked.recorded();
        List<String> lines = new ArrayList<>(Paragraph.lines(recorded.from() + ": " + NumberText.of(report.seconds(), Unit.SECOND)
                + " measured" + (recorded.live() ? "" : " of " + NumberText.of(recorded.ofSeconds(), Unit.SECOND)) + ", channel "
                + asked.channel() + " of " + recorded.channels().length + ", " + recorded.rateHz() + " Hz, " + recorded.bits()
                + " bits"));
        for (InputFault fault : faults) {
            lines.addAll(Paragraph.lines("Mind: ", "  ", fault.message()));
        }
        lines.add("");
        lines.addAll(Paragraph.lines(inWords()));
        timing.ifPresent(found -> lines.addAll(Paragraph.lines(timingInWords(found))));
        lines.add("");
        lines.addAll(levels().lines());
        lines.add("");
        lines.addAll(spectrum().lines());
        report.pulses().ifPresent(pulses -> {
            lines.add("");
            lines.addAll(pulses(pulses).lines());
        });
        lines.add("");
        lines.addAll(Paragraph.lines("Volts take full scale to be " + NumberText.of(asked.fullScaleVolts(), Unit.VOLT)
                + Remedy.of(" peak; ").set(Control.FULL_SCALE).then(" gives another.").text(wording)));
        return lines;
    }

    private String inWords() {
        ToneQuality tone = report.tone();
        if (report.isTone()) {
            return "A tone of " + NumberText.of(tone.frequencyHz(), Unit.HERTZ, 7) + ", " + NumberText.of(tone.amplitudeVolts(), Unit.VOLT)
                    + " peak; noise and distortion lie " + NumberText.decibels(tone.sinadDb()) + " below it (SINAD).";
        }
        if (report.wheel().isEmpty()) {
            return "No teeth and no steady tone: too few events, or none. The strongest line is at "
                    + NumberText.of(tone.frequencyHz(), Unit.HERTZ, 7) + ".";
        }
        DetectedWheel wheel = report.wheel().get();
        return (wheel.sensor() == DetectedWheel.Sensor.TWO_LEVEL ? "Two levels, like a Hall sensor's: " : "Like a reluctor's: ")
                + wheel.inWords() + "; " + speedInWords(wheel) + ".";
    }

    private static String speedInWords(DetectedWheel wheel) {
        double turnHz = SignalReport.turnHz(wheel);
        String mean = wheel.eventsPerTurn() > 0
                ? NumberText.of(turnHz * 60, Unit.RPM, 7) + " of this wheel"
                : NumberText.of(turnHz, Unit.HERTZ, 7) + " tooth rate";
        if (SignalReport.steady(wheel)) {
            return mean + ", steady";
        }
        double[] speeds = SignalReport.turnSpeedsHz(wheel);
        if (speeds.length == 0) {
            return mean;
        }
        double first = speeds[0];
        double last = speeds[speeds.length - 1];
        double scale = wheel.eventsPerTurn() > 0 ? 60 : 1;
        Unit unit = wheel.eventsPerTurn() > 0 ? Unit.RPM : Unit.HERTZ;
        return mean + " on average, from " + NumberText.of(first * scale, unit) + " at the start to "
                + NumberText.of(last * scale, unit) + " at the end";
    }

    private String timingInWords(PatternTiming found) {
        EdgeTiming edges = found.timing();
        return "Against " + asked.patternId() + " at " + speedInWords(found) + ": " + edges.missSeconds().length
                + (asked.hasTeeth() ? " edges" : " crossings of the middle") + " lie " + NumberText.of(edges.rmsSeconds(), Unit.SECOND, 3)
                + " rms from their places, the worst " + NumberText.of(edges.worstSeconds(), Unit.SECOND, 3)
                + (Double.isNaN(found.cycleHz()) ? "" : " (" + NumberText.of(360 * edges.worstSeconds() * found.cycleHz(), Unit.DEGREE, 2)
                        + " of its cycle)")
                + " at " + NumberText.of(edges.worstAtSeconds(), Unit.SECOND)
                + (Double.isNaN(found.levelDb()) ? "" : ". Its level is " + NumberText.signed(found.levelDb(), 2) + " dB against what is drawn")
                + (Double.isNaN(edges.clockRatio()) ? "" : ". The clocks differ by " + NumberText.signed((edges.clockRatio() - 1) * 1e6, 3) + " ppm")
                + (found.inverted() ? ". It is upside down: polarity is swapped on the way." : ".");
    }

    private String speedInWords(PatternTiming found) {
        double mean = (found.startHz() + found.endHz()) / 2;
        boolean followed = !Double.isNaN(found.timing().clockRatio());
        String off = Double.isNaN(asked.askedHz()) || followed ? ""
                : " (" + NumberText.signed((mean / asked.askedHz() - 1) * 1e6, 3) + " ppm off what was asked)";
        boolean steady = Math.abs(found.endHz() / found.startHz() - 1) < STEADY_PART;
        return (steady ? asked.speed(mean) : asked.speed(found.startHz()) + " to " + asked.speed(found.endHz()))
                + (followed ? ", following the profile" : "") + off;
    }

    private Table levels() {
        return new Table().row("Level", "peak", "rms", "mean")
                .row("", NumberText.of(report.peakVolts(), Unit.VOLT), NumberText.of(report.rmsVolts(), Unit.VOLT),
                        NumberText.of(report.meanVolts(), Unit.VOLT));
    }

    private Table spectrum() {
        ToneQuality tone = report.tone();
        Table table = new Table();
        if (report.isTone()) {
            table.row("Purity", "SINAD", "without harmonics", "THD", "largest other", "effective bits")
                    .row("", NumberText.decibels(tone.sinadDb()), NumberText.decibels(tone.snrDb()), NumberText.decibels(tone.thdDb()),
                            NumberText.decibels(-tone.sfdrDb()) + " at " + NumberText.of(tone.largestOther().frequencyHz(), Unit.HERTZ),
                            String.format(Locale.ROOT, "%.1f", tone.enobBits(2 * asked.fullScaleVolts())));
            return table;
        }
        table.row("Spectrum", "frequency", "peak");
        for (Spectrum.Peak peak : report.spectrum().peaks(LINES_TOLD)) {
            table.row("", NumberText.of(peak.frequencyHz(), Unit.HERTZ, 6), NumberText.of(peak.amplitudeVolts(), Unit.VOLT));
        }
        report.notHarmonic().ifPresent(other -> table.row("between the harmonics",
                NumberText.of(other.frequencyHz(), Unit.HERTZ, 6), NumberText.decibels(notHarmonicDb(other))));
        return table;
    }

    /** Against the strongest line. */
    private double notHarmonicDb(Spectrum.Peak other) {
        return 20 * Math.log10(other.amplitudeVolts() / report.tone().amplitudeVolts());
    }

    private static Table pulses(Pulses pulses) {
        return new Table().row("Pulses (IEC 60469)", "mean", "least", "most", "scatter, rms")
                .row("low level", NumberText.of(pulses.levels().lowVolts(), Unit.VOLT, 6))
                .row("high level", NumberText.of(pulses.levels().highVolts(), Unit.VOLT, 6))
                .row(row("period", pulses.periodSeconds(), Unit.SECOND))
                .row("cycle to cycle", "", "", "", NumberText.of(pulses.cycleToCycleSeconds().rms(), Unit.SECOND, 3))
                .row(row("pulse duration, high", pulses.highSeconds(), Unit.SECOND))
                .row(row("pulse duration, low", pulses.lowSeconds(), Unit.SECOND))
                .row(row("transition duration, up (10 to 90 %)", pulses.riseSeconds(), Unit.SECOND))
                .row(row("transition duration, down (90 to 10 %)", pulses.fallSeconds(), Unit.SECOND))
                .row(row("overshoot", pulses.overshootPercent(), Unit.PERCENT))
                .row(row("undershoot", pulses.undershootPercent(), Unit.PERCENT))
                .row(row("tilt", pulses.tiltPercent(), Unit.PERCENT));
    }

    /** For scripts. */
    public Object json() {
        return MeasuredJson.of(asked, report, faults, timing);
    }

    /** The edges' errors where a pattern is known, else the spectrum. */
    public LinePlot plot() {
        return timing.map(this::timingPlot).orElseGet(this::spectrumPlot);
    }

    /** Decibels below full scale over frequency by decades. */
    private LinePlot spectrumPlot() {
        Spectrum spectrum = report.spectrum();
        List<LinePlot.Point> points = SpectrumPoints.of(spectrum, asked.fullScaleVolts());
        return new LinePlot("Spectrum of " + asked.recorded().from() + ", channel " + asked.channel(), "frequency, Hz",
                points.get(0).x(), points.get(points.size() - 1).x(),
                List.of(new LinePlot.Panel("each line of " + NumberText.of(spectrum.binHz(), Unit.HERTZ, 3) + " width",
                        "dB of full scale", points)), true);
    }

    /** How late each edge comes. */
    private LinePlot timingPlot(PatternTiming found) {
        double[] misses = found.timing().missSeconds();
        List<LinePlot.Point> points = new ArrayList<>();
        for (int i = 0; i < misses.length; i++) {
            points.add(new LinePlot.Point(i + 1, misses[i] * 1e9));
        }
        return new LinePlot("Edges against " + asked.patternId(), "edge", 1, misses.length,
                List.of(new LinePlot.Panel("how late each edge comes", "ns", points)));
    }

    /** A row of a table: mean, least, most and the rms of the scatter. */
    private static String[] row(String name, Statistics spread, Unit unit) {
        return spread.count() == 0
                ? new String[] {name, "-", "-", "-", "-"}
                : new String[] {name, NumberText.of(spread.mean(), unit, 6), NumberText.of(spread.least(), unit, 6), NumberText.of(spread.most(), unit, 6),
                    NumberText.of(spread.rms(), unit, 3)};
    }
}
