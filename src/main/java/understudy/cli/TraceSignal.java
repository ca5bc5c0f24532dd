package understudy.cli;

import java.util.Optional;
import java.util.OptionalInt;
import understudy.audio.Destination;
import understudy.bench.Hookup;
import understudy.bench.Outlet;
import understudy.bench.SignalPlan;
import understudy.bench.SteadySignal;
import understudy.reading.Expected;
import understudy.trace.Subjects.Subject;
import understudy.view.SignalWords;

/**
 * The signal of one circuit, ready to be injected: healthy, at the circuit's speed, its one output on the first channel.
 *
 * @param plan        the pattern with nothing but that output
 * @param destination where it goes
 * @param subject     whose it is
 */
record TraceSignal(SignalPlan plan, Destination destination, Subject subject) {

    /** @throws understudy.refusal.Refused for what {@code play} would refuse, too */
    static TraceSignal of(Subject subject, Optional<Hookup> hookup, boolean fit, int rateHz, OptionalInt askedRateHz, Outlet outlet) {
        SignalPlan asked = SignalPlan.steady(subject.pattern(), subject.output(), subject.speedHz(), rateHz, hookup, fit);
        SteadySignal steady = SteadySignal.of(asked, askedRateHz, outlet);
        return new TraceSignal(steady.plan(), steady.destination(), subject);
    }

    double speedHz() {
        return plan.startHz();
    }

    double frequencyHz() {
        return subject.frequencyHz(speedHz());
    }

    Expected expected() {
        return subject.expected(speedHz());
    }

    /** "1400 rpm, 396.7 Hz". */
    String words() {
        return plan.pattern().speed().print(speedHz()) + ", " + SignalWords.hertz(frequencyHz());
    }

    /** What a meter for alternating volts shows at the clips at full level. */
    double clipVolts() {
        return plan.alternatingVolts();
    }
}
