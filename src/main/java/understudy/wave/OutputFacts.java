package understudy.wave;

import java.util.ArrayList;
import java.util.List;
import understudy.pattern.Bursts;
import understudy.pattern.DrawnCycle;
import understudy.pattern.Fault;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Reluctor;
import understudy.pattern.Signal;
import understudy.pattern.Tone;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;
import understudy.pattern.WheelSignal;

/**
 * What is true of one healthy output, in closed form; nothing here is measured on samples.
 *
 * @param output        its name
 * @param overDeg       degrees of the output's own turn after which it repeats
 * @param pitchDeg      distance of neighbouring teeth; NaN where there are none
 * @param events        of one cycle, by angle
 * @param cyclesPerTurn cycles for one turn of the pattern's speed; NaN for a tone of fixed frequency
 * @param fixedHz       cycles a second of a tone of fixed frequency, else NaN
 * @param lowestVolts   that the output ever reaches by its declared levels, faults included
 * @param highestVolts  likewise
 */
public record OutputFacts(
        String output,
        double overDeg,
        double pitchDeg,
        List<Event> events,
        double cyclesPerTurn,
        double fixedHz,
        double lowestVolts,
        double highestVolts) {

    /**
     * One transition or zero crossing.
     *
     * @param angleDeg of the output's own turn, from where the pattern counts
     * @param tooth    number of the tooth; 0 where there are none
     * @param kind     what happens there
     */
    public record Event(double angleDeg, int tooth, Kind kind) {}

    /** A Hall tooth's leading and trailing edge; a reluctor's crossing at its tooth; the start of a cycle or burst. */
    public enum Kind {
        LEADING_EDGE,
        TRAILING_EDGE,
        CROSSING,
        START;

        /** Whether decoders count this one: every tooth, cycle or burst has just one such event. */
        public boolean isTiming() {
            return this != TRAILING_EDGE;
        }
    }

    public OutputFacts {
        events = List.copyOf(events);
    }

    /** The facts of every output, in channel order. */
    public static List<OutputFacts> of(Pattern pattern) {
        return pattern.outputs().stream().map(output -> of(pattern, output)).toList();
    }

    /** Largest magnitude by the declared levels, faults included. */
    public double peakVolts() {
        return Math.max(Math.abs(lowestVolts), Math.abs(highestVolts));
    }

    /** The events that a decoder counts, by angle. */
    public List<Event> timingEvents() {
        return events.stream().filter(event -> event.kind().isTiming()).toList();
    }

    /** Degrees from each timing event to the next, the last to the first of the next cycle. */
    public List<Double> intervalsDeg() {
        List<Event> timing = timingEvents();
        List<Double> intervals = new ArrayList<>();
        for (int i = 0; i < timing.size(); i++) {
            double next = i + 1 < timing.size() ? timing.get(i + 1).angleDeg() : timing.get(0).angleDeg() + overDeg;
            intervals.add(next - timing.get(i).angleDeg());
        }
        return intervals;
    }

    /** Timing events for one turn of the pattern's speed; NaN for a tone of fixed frequency. */
    public double eventsPerTurn() {
        return timingEvents().size() * cyclesPerTurn;
    }

    /** Timing events a second, on average over a turn, at a speed in turns per second. */
    public double eventRateHz(double speedHz) {
        return Double.isNaN(fixedHz) ? eventsPerTurn() * speedHz : fixedHz;
    }

    private static OutputFacts of(Pattern pattern, Output output) {
        Signal signal = output.signal();
        double overDeg = 360;
        double pitchDeg = Double.NaN;
        double fixedHz = Double.NaN;
        double low;
        double high;
        List<Event> events = new ArrayList<>();
        if (signal instanceof WheelSignal wheelSignal) {
            Wheel wheel = wheelSignal.wheel();
            overDeg = wheel.overDeg();
            pitchDeg = wheel.pitchDeg();
            if (wheelSignal.sensor() instanceof Hall hall) {
                addEdges(wheel, events);
                low = Math.min(hall.lowVolts(), hall.highVolts());
                high = Math.max(hall.lowVolts(), hall.highVolts());
            } else {
                Reluctor reluctor = (Reluctor) wheelSignal.sensor();
                FluxShape flux = new FluxShape(wheel, FluxVoice.sigma(reluctor, wheel));
                addCrossings(wheel, flux, events);
                high = reluctor.ceilingVolts() * flux.peak() / FluxVoice.normalSwing(reluctor, wheel);
                low = -high;
            }
        } else if (signal instanceof Tone tone) {
            events.add(new Event(0, 0, Kind.START));
            overDeg = tone.fixedFrequency() ? 360 : 360 / tone.cyclesPerTurn();
            fixedHz = tone.frequencyHz();
            low = tone.offsetVolts() - tone.peakToPeakVolts() / 2;
            high = tone.offsetVolts() + tone.peakToPeakVolts() / 2;
        } else if (signal instanceof Bursts bursts) {
            overDeg = bursts.overDeg();
            bursts.atDeg().forEach(deg -> events.add(new Event(deg, 0, Kind.START)));
            high = bursts.peakVolts() + Chance.BELL_MOST * bursts.noiseVolts();
            low = -high;
        } else {
            DrawnCycle drawn = (DrawnCycle) signal;
            overDeg = drawn.overDeg();
            events.add(new Event(0, 0, Kind.START));
            low = drawn.points().stream().mapToDouble(DrawnCycle.Point::volts).min().orElseThrow();
            high = drawn.points().stream().mapToDouble(DrawnCycle.Point::volts).max().orElseThrow();
        }
        double[] extremes = withFaults(pattern, output, low, high);
        double cyclesPerTurn = Double.isNaN(fixedHz) ? output.ratio() * 360 / overDeg : Double.NaN;
        return new OutputFacts(
                output.name(), overDeg, pitchDeg, events, cyclesPerTurn, fixedHz, extremes[0], extremes[1]);
    }

    private static void addEdges(Wheel wheel, List<Event> events) {
        for (Tooth tooth : wheel.teeth()) {
            events.add(new Event(tooth.leadingDeg(), tooth.number(), Kind.LEADING_EDGE));
            events.add(new Event(tooth.trailingDeg(), tooth.number(), Kind.TRAILING_EDGE));
        }
    }

    private static void addCrossings(Wheel wheel, FluxShape flux, List<Event> events) {
        for (Tooth tooth : wheel.teeth()) {
            double at = flux.crossingOf(tooth.leadingDeg() / wheel.overDeg(), tooth.trailingDeg() / wheel.overDeg());
            events.add(new Event(at * wheel.overDeg(), tooth.number(), Kind.CROSSING));
        }
    }

    /** How far the output's faults can push its extremes, all acting at once. */
    private static double[] withFaults(Pattern pattern, Output output, double low, double high) {
        double gain = 1;
        double added = 0;
        boolean swapped = false;
        for (Fault fault : pattern.faults()) {
            if (!fault.place().output().equals(output.name())) {
                continue;
            }
            if (fault instanceof Fault.Level level) {
                gain *= Math.max(1, level.factor());
            } else if (fault instanceof Fault.SwappedPolarity) {
                swapped = true;
            } else if (fault instanceof Fault.Noise noise) {
                added += noise.rmsVolts() * Chance.BELL_MOST;
            } else if (fault instanceof Fault.Hum hum) {
                added += hum.rmsVolts() * Math.sqrt(2);
            } else if (fault instanceof Fault.Spikes spikes) {
                added += Math.abs(spikes.peakVolts());
            }
        }
        double most = Math.max(high, swapped ? -low : high) * gain + added;
        double least = Math.min(low, swapped ? -high : low) * gain - added;
        return new double[] {least, most};
    }
}
