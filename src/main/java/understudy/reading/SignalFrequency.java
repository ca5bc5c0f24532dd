package understudy.reading;

import java.util.List;
import java.util.OptionalDouble;
import understudy.pattern.DrawnCycle;
import understudy.pattern.Output;
import understudy.pattern.Signal;
import understudy.pattern.Tone;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;
import understudy.pattern.WheelSignal;

/**
 * How many events a second a module counts of a pattern's output: teeth, cycles of a tone or of a drawn cycle.
 *
 * <p>A wheel of even pitch counts its positions, missing teeth included, since a module measures the pitch and fills the
 * gap in: 36-1 at 600 rpm gives 360 Hz. A wheel whose teeth are unevenly spaced counts the teeth that are there.
 */
public final class SignalFrequency {

    /** Fewer teeth than this part of the positions are no wheel with a gap, but teeth that happen to share a grid. */
    private static final double LEAST_PRESENT = 2 / 3.0;
    /** In pitches: far above rounding, far below any tooth that is meant to be off its place. */
    private static final double ON_GRID = 1e-6;

    private SignalFrequency() {}

    /** At so many turns a second of the pattern's speed; empty for what no module counts, as knock bursts. */
    public static OptionalDouble hz(Output output, double speedHz) {
        Signal signal = output.signal();
        double turnsHz = output.ratio() * speedHz;
        if (signal instanceof WheelSignal wheel) {
            return OptionalDouble.of(eventsPerTurn(wheel.wheel()) * turnsHz);
        }
        if (signal instanceof Tone tone) {
            return OptionalDouble.of(tone.fixedFrequency() ? tone.frequencyHz() : tone.cyclesPerTurn() * turnsHz);
        }
        return signal instanceof DrawnCycle drawn ? OptionalDouble.of(360 / drawn.overDeg() * turnsHz) : OptionalDouble.empty();
    }

    /** In one turn of the wheel. */
    public static double eventsPerTurn(Wheel wheel) {
        double positions = Math.rint(wheel.overDeg() / wheel.pitchDeg());
        boolean gapped = wheel.teeth().size() >= LEAST_PRESENT * positions && (onGrid(wheel, false) || onGrid(wheel, true));
        return 360 / wheel.overDeg() * (gapped ? positions : wheel.teeth().size());
    }

    private static boolean onGrid(Wheel wheel, boolean centres) {
        List<Double> angles = wheel.teeth().stream().map(centres ? Tooth::centreDeg : Tooth::leadingDeg).toList();
        return angles.stream().map(angle -> (angle - angles.get(0)) / wheel.pitchDeg())
                .allMatch(pitches -> Math.abs(pitches - Math.rint(pitches)) < ON_GRID);
    }
}
