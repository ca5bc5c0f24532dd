package understudy.view;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import understudy.audio.Recorded;
import understudy.measure.InputCheck;
import understudy.measure.InputFault;
import understudy.measure.PatternTiming;
import understudy.measure.SignalReport;
import understudy.pattern.Pattern;
import understudy.pattern.Profile;
import understudy.pattern.Signal;
import understudy.pattern.Tone;
import understudy.pattern.WheelSignal;
import understudy.quantity.NumberText;
import understudy.quantity.Unit;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refused;
import understudy.refusal.Wording;

/**
 * One channel of a recording, and what it is compared with.
 *
 * @param channel        counted from 1
 * @param fullScaleVolts peak
 * @param pattern        that was played, with its course of speeds, if it is known
 * @param output         of that pattern, counted from 0
 * @param askedHz        the speed that was asked for, turns a second; NaN if none was
 */
public record MeasuredChannel(Recorded recorded, int channel, double fullScaleVolts, Optional<Pattern> pattern, int output, double askedHz) {

    /** How far into a profile a recording may begin. */
    private static final double MOST_PROFILE_SECONDS = 600;
    /** An even row of events at this part of the mains frequency may be hum, and nothing else. */
    private static final double LIKE_MAINS = 0.003;

    /** What edges are compared with; a recording may begin anywhere in a profile, and go on after it. */
    public Optional<PatternTiming.Asked> program() {
        return pattern.map(played -> new PatternTiming.Asked(played, output,
                Double.isNaN(askedHz) ? played.speed().defaultHz() : askedHz,
                Math.min(MOST_PROFILE_SECONDS, played.profile().map(Profile::seconds).orElse(0.0))
                        + recorded.seconds()));
    }

    public String patternId() {
        return pattern.orElseThrow().id();
    }

    public boolean hasTeeth() {
        return signal() instanceof WheelSignal;
    }

    /** A speed of the pattern, or the frequency of a tone that has its own. */
    public String speed(double hz) {
        return signal() instanceof Tone tone && tone.fixedFrequency() ? NumberText.of(hz, Unit.HERTZ, 7) : pattern.orElseThrow().speed().print(hz);
    }

    private Signal signal() {
        return pattern.orElseThrow().outputs().get(output).signal();
    }

    public double[] volts() {
        return Arrays.stream(recorded.channels()[channel - 1]).map(part -> part * fullScaleVolts).toArray();
    }

    /**
     * Measures it.
     *
     * @param expectedSeconds how long it should be; 0: not known
     * @throws Refused for a channel in which there is nothing
     */
    public MeasuredText measure(double expectedSeconds, Wording wording) {
        double[] volts = volts();
        refuseDead(faults(expectedSeconds, 0));
        SignalReport report = SignalReport.of(volts, recorded.rateHz());
        Optional<PatternTiming> timing = program().map(program -> PatternTiming.of(SignalReport.sound(volts, recorded.rateHz()),
                recorded.rateHz(), program));
        return new MeasuredText(this, report, faults(expectedSeconds, signalHz(report)), timing, wording);
    }

    /** What is wrong with this channel; the others count only for telling a dead channel from silence. */
    private List<InputFault> faults(double expectedSeconds, double signalHz) {
        return new InputCheck(recorded.rateHz(), 1, expectedSeconds, signalHz).of(recorded.channels()).stream()
                .filter(fault -> fault.channel() == channel).toList();
    }

    private void refuseDead(List<InputFault> faults) {
        List<Refusal> dead = faults.stream()
                .filter(fault -> fault.kind() == InputFault.Kind.SILENT || fault.kind() == InputFault.Kind.CHANNEL_DEAD)
                .map(fault -> new Refusal(Location.named(recorded.from()), fault.message(), "")).toList();
        if (!dead.isEmpty()) {
            throw new Refused(dead);
        }
    }

    /** What the signal's own lines are multiples of, so that they don't pass for hum. */
    private double signalHz(SignalReport report) {
        double own = report.wheel().map(SignalReport::turnHz).orElse(report.tone().frequencyHz());
        boolean gap = report.wheel().isPresent() && report.wheel().get().eventsPerTurn() > 0;
        boolean likeMains = Math.abs(own / 50 - 1) < LIKE_MAINS || Math.abs(own / 60 - 1) < LIKE_MAINS;
        return likeMains && !gap && pattern.isEmpty() ? 0 : own;
    }
}
