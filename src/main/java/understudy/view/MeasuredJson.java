package understudy.view;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import understudy.measure.DetectedWheel;
import understudy.measure.InputFault;
import understudy.measure.PatternTiming;
import understudy.measure.Pulses;
import understudy.measure.SignalReport;
import understudy.measure.Spectrum;
import understudy.measure.Spread;
import understudy.measure.ToneQuality;
import understudy.text.Json;

/** A measurement for scripts: SI units, the unit in each name; null where there is nothing to tell. */
public final class MeasuredJson {

    private static final int LINES_TOLD = 20;

    private MeasuredJson() {}

    public static Map<String, Object> of(MeasuredChannel asked, SignalReport report, List<InputFault> faults, Optional<PatternTiming> timing) {
        return Json.map(
                "source", asked.recorded().from(),
                "rateHz", asked.recorded().rateHz(),
                "bits", asked.recorded().bits(),
                "channel", asked.channel(),
                "fullScaleVolts", number(asked.fullScaleVolts()),
                "seconds", number(report.seconds()),
                "leftOutSeconds", number(report.leftOut()),
                "faults", faults(faults),
                "peakVolts", number(report.peakVolts()),
                "rmsVolts", number(report.rmsVolts()),
                "meanVolts", number(report.meanVolts()),
                "tone", tone(report.tone(), asked.fullScaleVolts()),
                "lines", report.spectrum().peaks(LINES_TOLD).stream().map(MeasuredJson::line).toList(),
                "betweenHarmonics", report.notHarmonic().map(MeasuredJson::line).orElse(null),
                "wheel", report.wheel().map(MeasuredJson::wheel).orElse(null),
                "pulses", report.pulses().map(MeasuredJson::pulses).orElse(null),
                "timing", timing.map(found -> timing(asked, found)).orElse(null));
    }

    public static List<Map<String, Object>> faults(List<InputFault> faults) {
        return faults.stream().map(fault -> Json.map(
                "kind", fault.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                "channel", fault.channel(), "message", fault.message())).toList();
    }

    /** Null for what is no number. */
    public static BigDecimal number(double value) {
        return Double.isFinite(value) ? Json.number(value) : null;
    }

    public static List<BigDecimal> numbers(double[] values) {
        return Arrays.stream(values).mapToObj(MeasuredJson::number).toList();
    }

    private static Map<String, Object> tone(ToneQuality tone, double fullScaleVolts) {
        return Json.map("frequencyHz", number(tone.frequencyHz()), "peakVolts", number(tone.amplitudeVolts()),
                "sinadDb", number(tone.sinadDb()), "snrDb", number(tone.snrDb()), "thdDb", number(tone.thdDb()),
                "sfdrDb", number(tone.sfdrDb()), "enobBits", number(tone.enobBits(2 * fullScaleVolts)));
    }

    private static Map<String, Object> line(Spectrum.Peak peak) {
        return Json.map("frequencyHz", number(peak.frequencyHz()), "peakVolts", number(peak.amplitudeVolts()));
    }

    private static Map<String, Object> wheel(DetectedWheel wheel) {
        return Json.map(
                "sensor", wheel.sensor().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                "polarity", wheel.polarity().name().toLowerCase(Locale.ROOT),
                "teethPerTurn", wheel.eventsPerTurn() == 0 ? null : wheel.eventsPerTurn(),
                "placesPerTurn", wheel.placesPerTurn() == 0 ? null : wheel.placesPerTurn(),
                "gaps", wheel.gaps().stream().map(gap -> Json.map(
                        "afterTooth", gap.afterTooth(), "pitches", number(gap.pitches()))).toList(),
                "turnHz", wheel.eventsPerTurn() == 0 ? null : number(SignalReport.turnHz(wheel)),
                "eventHz", number(wheel.eventRateHz()),
                "steady", SignalReport.steady(wheel));
    }

    private static Map<String, Object> pulses(Pulses pulses) {
        return Json.map(
                "lowVolts", number(pulses.levels().lowVolts()), "highVolts", number(pulses.levels().highVolts()),
                "duty", number(pulses.duty()),
                "periodSeconds", spread(pulses.periodSeconds()),
                "cycleToCycleSeconds", spread(pulses.cycleToCycleSeconds()),
                "highSeconds", spread(pulses.highSeconds()), "lowSeconds", spread(pulses.lowSeconds()),
                "riseSeconds", spread(pulses.riseSeconds()), "fallSeconds", spread(pulses.fallSeconds()),
                "overshootPercent", spread(pulses.overshootPercent()),
                "undershootPercent", spread(pulses.undershootPercent()), "tiltPercent", spread(pulses.tiltPercent()));
    }

    private static Map<String, Object> spread(Spread spread) {
        return Json.map("count", spread.count(), "mean", number(spread.mean()), "rmsDeviation", number(spread.rms()),
                "least", number(spread.least()), "most", number(spread.most()));
    }

    private static Map<String, Object> timing(MeasuredChannel asked, PatternTiming found) {
        return Json.map(
                "pattern", asked.pattern().orElseThrow().id(),
                "output", asked.pattern().orElseThrow().outputs().get(asked.output()).name(),
                "edges", found.timing().missSeconds().length,
                "rmsSeconds", number(found.timing().rmsSeconds()),
                "worstSeconds", number(found.timing().worstSeconds()),
                "worstAtSeconds", number(found.timing().worstAtSeconds()),
                "startHz", number(found.startHz()), "endHz", number(found.endHz()),
                "askedHz", number(asked.askedHz()),
                "clockRatio", number(found.timing().clockRatio()),
                "cycleHz", number(found.cycleHz()),
                "levelDb", number(found.levelDb()),
                "inverted", found.inverted(),
                "missSeconds", numbers(found.timing().missSeconds()));
    }

    public static Map<String, Object> spread(understudy.rig.Spread spread) {
        return Json.map("nominal", Json.number(spread.nominal()), "tolerance", Json.number(spread.tolerance()));
    }
}
