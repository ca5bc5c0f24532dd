package understudy.wave;

import java.util.ArrayList;
import java.util.List;
import understudy.motion.Motion;
import understudy.pattern.Fault;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;

/** The teeth of a wheel as they come by, each with what the faults of that moment make of it. Angles are cycles. */
final class ToothTrain {
    /** A jumped belt comes in over several teeth, at most this part of a pitch each, so that no tooth overtakes another. */
    private static final double SHIFT_PITCHES_PER_TOOTH = 0.25;
    /** Edges keep at least this distance, so that their order stands whatever the faults ask for. */
    private static final double LEAST_PITCHES = 1e-3;

    private record ToothFault(Switch when, Fault fault) {}

    private final Axis axis;
    private final Motion motion;
    private final double[] leading;
    private final double[] trailing;
    private final int[] number;
    private final double turnsPerCycle;
    private final double overDeg;
    private final double mostShift;
    private final double least;
    private final double mostEarly;
    private final ToothFault[] faults;

    private long cycle;
    private int index;
    private double shift;
    private double lastTrailing = Double.NEGATIVE_INFINITY;

    /** The tooth that {@link #next} found, in cycles above the axis's base. */
    double leadingAt;
    double trailingAt;
    /** 0 for a missing tooth, 1 for a healthy one. */
    double strength;

    ToothTrain(Wheel wheel, Axis axis, Motion motion, List<Fault> all, List<Switch> switches) {
        this.axis = axis;
        this.motion = motion;
        this.overDeg = wheel.overDeg();
        this.turnsPerCycle = overDeg / 360;
        double pitch = wheel.pitchDeg() / overDeg;
        this.mostShift = SHIFT_PITCHES_PER_TOOTH * pitch;
        this.least = LEAST_PITCHES * pitch;
        int n = wheel.teeth().size();
        leading = new double[n];
        trailing = new double[n];
        number = new int[n];
        double whole = Math.floor(wheel.teeth().get(0).leadingDeg() / overDeg);
        for (int i = 0; i < n; i++) {
            Tooth tooth = wheel.teeth().get(i);
            leading[i] = tooth.leadingDeg() / overDeg - whole;
            trailing[i] = tooth.trailingDeg() / overDeg - whole;
            number[i] = tooth.number();
        }
        List<ToothFault> mine = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (switches.get(i) != null && shapesTeeth(all.get(i))) {
                mine.add(new ToothFault(switches.get(i), all.get(i)));
            }
        }
        faults = mine.toArray(new ToothFault[0]);
        double early = 0;
        for (ToothFault f : faults) {
            if (f.fault instanceof Fault.DisplacedTooth displaced) {
                early += Math.max(0, -displaced.byDeg()) / overDeg;
            } else if (f.fault instanceof Fault.RunOut runOut) {
                early += Math.abs(runOut.timingDeg()) / overDeg;
            } else if (f.fault instanceof Fault.Shift) {
                early += mostShift;
            }
        }
        mostEarly = early;
        // two cycles back: whatever still reaches into frame 0 is behind the first tooth that matters
        cycle = (long) Math.floor(axis.startCycle()) - 2;
    }

    private static boolean shapesTeeth(Fault fault) {
        return fault instanceof Fault.MissingTooth
                || fault instanceof Fault.WeakTooth
                || fault instanceof Fault.DisplacedTooth
                || fault instanceof Fault.Shift
                || fault instanceof Fault.RunOut runOut && runOut.timingDeg() != 0;
    }

    /** Keeps its place when the axis's base moves on by {@code cycles}. */
    void rebase(long cycles) {
        lastTrailing -= cycles;
        leadingAt -= cycles;
        trailingAt -= cycles;
    }

    /** No faults can make the next tooth begin before this, in cycles above the axis's base. */
    double earliestLeading() {
        return axis.aboveBase(cycle, leading[index]) + shift - mostEarly;
    }

    /** Moves on to the next tooth. */
    void next(long faultsOn) {
        double lead = leading[index];
        double trail = trailing[index];
        strength = 1;
        double lateLead = 0;
        double lateTrail = 0;
        if (faults.length > 0) {
            double centre = 0.5 * (lead + trail);
            long turn = (long) Math.floor((cycle + centre) * turnsPerCycle);
            double frame = axis.cyclesPerTurn() > 0
                    ? motion.startFrame() + motion.frameAt(axis.turnsAt(axis.aboveBase(cycle, centre)))
                    : 0;
            double wantedShift = 0;
            for (ToothFault f : faults) {
                if (!f.when.acts(turn, frame, faultsOn)) {
                    continue;
                }
                if (f.fault instanceof Fault.MissingTooth missing) {
                    strength = isOneOf(missing.teeth()) ? 0 : strength;
                } else if (f.fault instanceof Fault.WeakTooth weak) {
                    strength *= isOneOf(weak.teeth()) ? weak.strength() : 1;
                } else if (f.fault instanceof Fault.DisplacedTooth displaced) {
                    double by = isOneOf(displaced.teeth()) ? displaced.byDeg() / overDeg : 0;
                    lateLead += by;
                    lateTrail += by;
                } else if (f.fault instanceof Fault.RunOut runOut) {
                    double late = runOut.timingDeg() / overDeg;
                    lateLead += late * Sine.ofTurns(lead * turnsPerCycle - runOut.atDeg() / 360);
                    lateTrail += late * Sine.ofTurns(trail * turnsPerCycle - runOut.atDeg() / 360);
                } else if (f.fault instanceof Fault.Shift jumped) {
                    wantedShift += jumped.byDeg() / overDeg;
                }
            }
            shift += Math.max(-mostShift, Math.min(mostShift, wantedShift - shift));
        }
        leadingAt = Math.max(axis.aboveBase(cycle, lead) + shift + lateLead, lastTrailing + least);
        trailingAt = Math.max(axis.aboveBase(cycle, trail) + shift + lateTrail, leadingAt + least);
        lastTrailing = trailingAt;
        if (++index == leading.length) {
            index = 0;
            cycle++;
        }
    }

    private boolean isOneOf(List<Integer> teeth) {
        for (int i = 0; i < teeth.size(); i++) {
            if (teeth.get(i) == number[index]) {
                return true;
            }
        }
        return false;
    }
}
