package understudy.hunt;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import understudy.audio.Destination;
import understudy.bench.Agreement;
import understudy.bench.Consent;
import understudy.bench.Hookup;
import understudy.bench.Outlet;
import understudy.bench.SignalPlan;
import understudy.bench.SteadySignal;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.trace.Subjects.Subject;

/**
 * The signal of one circuit, ready to be injected: healthy, at the circuit's speed, its one output on the first channel.
 *
 * @param plan        the pattern with nothing but that output
 * @param destination where it goes
 * @param subject     whose it is
 */
public record Injection(SignalPlan plan, Destination destination, Subject subject) {

    /** @throws understudy.refusal.Refused for what {@code play} would refuse, too */
    static Injection of(Subject subject, Optional<Hookup> hookup, boolean fit, int rateHz, OptionalInt askedRateHz, Outlet outlet) {
        SignalPlan asked = SignalPlan.steady(subject.pattern(), subject.output(), subject.speedHz(), rateHz, hookup, fit);
        SteadySignal steady = SteadySignal.of(asked, askedRateHz, outlet);
        return new Injection(steady.plan(), steady.destination(), subject);
    }

    HuntSignal signal(Outlet outlet, Agreement agreement) {
        double speedHz = plan.startHz();
        double frequencyHz = subject.frequencyHz(speedHz);
        return new HuntSignal(speedHz, frequencyHz, subject.expected(speedHz), plan.alternatingVolts(),
                plan.pattern().speed().print(speedHz) + ", " + new Quantity(frequencyHz, Unit.HERTZ).rounded(4),
                outlet.leaves() ? Consent.of(plan, true, agreement).toRead() : List.of());
    }
}
