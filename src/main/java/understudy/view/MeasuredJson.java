package understudy.view;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import understudy.measure.DetectedWheel;
import understudy.measure.InputFault;
import understudy.measure.PatternTiming;
import understudy.measure.SignalReport;
import understudy.measure.Spectrum;

/** A measurement for scripts: SI units, the unit in each name; null, or a number that is not finite, where nothing is known. */
record MeasuredJson(String source, int rateHz, int bits, int channel, double fullScaleVolts, double seconds, double leftOutSeconds,
        List<Fault> faults, double peakVolts, double rmsVolts, double meanVolts, Tone tone, List<Line> lines,
        Optional<Line> betweenHarmonics, Optional<Wheel> wheel, Optional<Pulses> pulses, Optional<Timing> timing) {

    private static final int LINES_TOLD = 20;

    record Fault(String kind, int channel, String message) {
        static Fault of(InputFault fault) {
            return new Fault(key(fault.kind()), fault.channel(), fault.message());
        }
    }

    record Tone(double frequencyHz, double peakVolts, double sinadDb, double snrDb, double thdDb, double sfdrDb, double enobBits) {
        static Tone of(understudy.measure.ToneQuality tone, double fullScaleVolts) {
            return new Tone(tone.frequencyHz(), tone.amplitudeVolts(), tone.sinadDb(), tone.snrDb(), tone.thdDb(), tone.sfdrDb(),
                    tone.enobBits(2 * fullScaleVolts));
        }
    }

    /** Of the spectrum. */
    record Line(double frequencyHz, double peakVolts) {
        static Line of(Spectrum.Peak peak) {
            return new Line(peak.frequencyHz(), peak.amplitudeVolts());
        }
    }

    /** Without a gap nobody sees where a turn begins: no teeth, places and turns are known then. */
    record Wheel(String sensor, String polarity, OptionalInt teethPerTurn, OptionalInt placesPerTurn, List<DetectedWheel.Gap> gaps,
            double turnHz, double eventHz, boolean steady) {
        static Wheel of(DetectedWheel wheel) {
            return new Wheel(key(wheel.sensor()), key(wheel.polarity()), unlessNone(wheel.eventsPerTurn()),
                    unlessNone(wheel.placesPerTurn()), wheel.gaps(),
                    wheel.eventsPerTurn() == 0 ? Double.NaN : SignalReport.turnHz(wheel), wheel.eventRateHz(), SignalReport.steady(wheel));
        }
    }

    record Spread(int count, double mean, double rmsDeviation, double least, double most) {
        static Spread of(understudy.measure.Statistics spread) {
            return new Spread(spread.count(), spread.mean(), spread.rms(), spread.least(), spread.most());
        }
    }

    record Pulses(double lowVolts, double highVolts, double duty, Spread periodSeconds, Spread cycleToCycleSeconds, Spread highSeconds,
            Spread lowSeconds, Spread riseSeconds, Spread fallSeconds, Spread overshootPercent, Spread undershootPercent,
            Spread tiltPercent) {
        static Pulses of(understudy.measure.Pulses pulses) {
            return new Pulses(pulses.levels().lowVolts(), pulses.levels().highVolts(), pulses.duty(),
                    Spread.of(pulses.periodSeconds()), Spread.of(pulses.cycleToCycleSeconds()), Spread.of(pulses.highSeconds()),
                    Spread.of(pulses.lowSeconds()), Spread.of(pulses.riseSeconds()), Spread.of(pulses.fallSeconds()),
                    Spread.of(pulses.overshootPercent()), Spread.of(pulses.undershootPercent()), Spread.of(pulses.tiltPercent()));
        }
    }

    /** Against a pattern. */
    record Timing(String pattern, String output, int edges, double rmsSeconds, double worstSeconds, double worstAtSeconds, double startHz,
            double endHz, double askedHz, double clockRatio, double cycleHz, double levelDb, boolean inverted,
            List<Double> missSeconds) {
        static Timing of(MeasuredChannel asked, PatternTiming found) {
            return new Timing(asked.patternId(), asked.pattern().orElseThrow().outputs().get(asked.output()).name(),
                    found.timing().missSeconds().length, found.timing().rmsSeconds(), found.timing().worstSeconds(),
                    found.timing().worstAtSeconds(), found.startHz(), found.endHz(), asked.askedHz(), found.timing().clockRatio(),
                    found.cycleHz(), found.levelDb(), found.inverted(), Arrays.stream(found.timing().missSeconds()).boxed().toList());
        }
    }

    static MeasuredJson of(MeasuredChannel asked, SignalReport report, List<InputFault> faults, Optional<PatternTiming> timing) {
        return new MeasuredJson(asked.recorded().from(), asked.recorded().rateHz(), asked.recorded().bits(), asked.channel(),
                asked.fullScaleVolts(), report.seconds(), report.leftOut(), faults.stream().map(Fault::of).toList(), report.peakVolts(),
                report.rmsVolts(), report.meanVolts(), Tone.of(report.tone(), asked.fullScaleVolts()),
                report.spectrum().peaks(LINES_TOLD).stream().map(Line::of).toList(), report.notHarmonic().map(Line::of),
                report.wheel().map(Wheel::of), report.pulses().map(Pulses::of), timing.map(found -> Timing.of(asked, found)));
    }

    /** "two-level" for TWO_LEVEL. */
    private static String key(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static OptionalInt unlessNone(int count) {
        return count == 0 ? OptionalInt.empty() : OptionalInt.of(count);
    }
}
