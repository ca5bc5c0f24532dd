package understudy.rig;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/**
 * All that is to be known of one rig on one input before it is built: the worst over all tolerances, but for the levels.
 *
 * @param levels            nominal
 * @param nominalMarginVolts at nominal values
 * @param marginVolts       at the worst corner of the tolerances; above 0 the input switches
 * @param states            the worst of each state
 * @param sourceOhms        seen from the clips, at signal frequencies, nominal
 * @param directOhms        seen from the clips, for direct current, nominal; infinite when it is blocked
 */
public record Assessment(
        Rig rig,
        Input input,
        Use use,
        Levels levels,
        double nominalMarginVolts,
        double marginVolts,
        Map<State, StateReport> states,
        double sourceOhms,
        double directOhms) {

    /** More than this is as good as open: what the age in {@link Network} leaves of a blocked path. */
    private static final double OPEN_OHMS = 1e8;

    public Assessment {
        states = Collections.unmodifiableMap(states);
    }

    public static Assessment of(Rig rig, Input input, Use use) {
        Levels levels = new Connection(rig, input).levels(use);
        return new Assessment(rig, input, use, levels, levels.marginVolts(input), WorstCase.marginVolts(rig, input, use),
                StateStudy.worst(rig, input, use), sourceOhms(rig, input), directOhms(rig, input));
    }

    /** The state that uses up most of its limit. */
    public State worstState(CurrentLimits limits) {
        State worst = State.NORMAL;
        for (State state : State.values()) {
            if (used(state, limits) > used(worst, limits)) {
                worst = state;
            }
        }
        return worst;
    }

    private double used(State state, CurrentLimits limits) {
        return states.get(state).judgedAmps() / limits.of(state);
    }

    /** What is over a limit, in words, state by state; empty when all is well. */
    public List<String> breaches(CurrentLimits limits) {
        List<String> breaches = new ArrayList<>();
        for (State state : State.values()) {
            StateReport report = states.get(state);
            if (report.judgedAmps() > limits.of(state)) {
                breaches.add(state.words() + " gives " + Bounds.print(report.judgedAmps(), Unit.AMPERE)
                        + " through a clip, the limit is " + Bounds.print(limits.of(state), Unit.AMPERE));
            }
        }
        StateReport normal = states.get(State.NORMAL);
        if (StateStudy.sinksTooMuch(input, normal)) {
            breaches.add("the input drives " + Bounds.print(normal.inputAmps(), Unit.AMPERE)
                    + " back through the rig, more than its sensor would have to sink");
        }
        return breaches;
    }

    /** Refuses a rig that could exceed a limit, with the reason and the nearest values that would do. */
    public void requireWithin(CurrentLimits limits, Preferred series) {
        List<String> breaches = breaches(limits);
        if (!breaches.isEmpty()) {
            String right = DividerSearch.nearest(this, limits, series)
                    .map(divider -> "the nearest values that keep the limits are " + words(divider))
                    .orElse("no resistors up to 1 Mohm keep the limits here");
            throw new Refused(String.join("; ", breaches), right);
        }
    }

    static String words(Divider divider) {
        return "series " + Bounds.print(divider.seriesOhms().nominal(), Unit.OHM) + ", " + divider.shuntOhms()
                .map(shunt -> "shunt " + Bounds.print(shunt.nominal(), Unit.OHM)).orElse("no shunt");
    }

    static double sourceOhms(Rig rig, Input input) {
        return seenOhms(rig, input, Network.Hold.INSTANT);
    }

    static double directOhms(Rig rig, Input input) {
        double ohms = seenOhms(rig, input, Network.Hold.SETTLED);
        return ohms > OPEN_OHMS ? Double.POSITIVE_INFINITY : ohms;
    }

    /** From clip to clip, by a volt put across them. */
    private static double seenOhms(Rig rig, Input input, Network.Hold hold) {
        Spread open = Spread.exactly(Bounds.OHMS.to());
        Input nothing = new ReluctorInput(input.differential(), open, Spread.exactly(0), open, 0, FrontEnd.BARE,
                new Arming.Hysteresis(-1, 1), ReluctorInput.Edge.FALLING, Bounds.OHMS.to());
        Wiring wiring = new Wiring(rig, nothing, Wiring.Clips.FAULT_ACROSS_PINS, Wiring.Shunting.FILTERS);
        double[] volts = wiring.network.solve(hold, new double[wiring.network.stateSize()], 0, 1).nodeVolts();
        double amps = (volts[wiring.firstPin] - volts[wiring.top]) / wiring.legOhms;
        return (volts[wiring.firstPin] - volts[wiring.secondPin]) / amps;
    }
}
