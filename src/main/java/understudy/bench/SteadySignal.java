package understudy.bench;

import java.util.OptionalInt;
import understudy.audio.Destination;
import understudy.refusal.Refusals;

/**
 * A steady signal that may be played, and where it goes.
 *
 * @param plan at the destination's rate
 */
public record SteadySignal(SignalPlan plan, Destination destination) {

    /** @throws understudy.refusal.Refused for what {@code play} would refuse, too */
    public static SteadySignal of(SignalPlan asked, OptionalInt askedRateHz, Outlet outlet) {
        Refusals problems = new Refusals();
        asked.check(problems);
        problems.refuse();
        Destination destination = outlet.destination(asked, askedRateHz);
        SignalPlan plan = asked.atRate(destination.rateHz());
        plan.checkRate(problems);
        problems.refuse();
        return new SteadySignal(plan, destination);
    }
}
