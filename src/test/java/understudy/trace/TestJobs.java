package understudy.trace;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import understudy.pattern.Hazard;
import understudy.pattern.PatternLibrary;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.text.Source;

/** Jobs to test with, on the shipped circuits. */
final class TestJobs {

    static final Instant NOON = Instant.parse("2026-05-04T12:00:00Z");

    private TestJobs() {}

    static Job.Subject kept(String circuitId) {
        Source circuit = CircuitLibrary.open().source(circuitId).value().orElseThrow();
        String pattern = CircuitReader.read(circuit).value().orElseThrow().patternName();
        return new Job.Subject(circuit, PatternLibrary.open().source(pattern).value().orElseThrow());
    }

    static Subjects.Subject subject(String circuitId) {
        return Subjects.Subject.of(kept(circuitId));
    }

    /** The speedometer's job, without its reference circuit. */
    static Job alone() {
        return job("fieldhand-4-speedometer", Optional.empty());
    }

    static Job withReference() {
        return job("fieldhand-4-speedometer", Optional.of("fieldhand-4-wheel-rear-left"));
    }

    private static Job job(String suspect, Optional<String> reference) {
        return new Job("test", NOON, "bench vehicle", "drops to zero on rough ground", "the instructor", kept(suspect),
                reference.map(TestJobs::kept), new Job.Equipment(Optional.empty(), Optional.empty(),
                        new Range(-0.3, 5.5, Unit.VOLT), List.of("played silently")), List.of());
    }

    static Hunt cautioned(Job job) {
        return Hunt.of(job).after(NOON, new Entry.Cautioned(List.of(Hazard.values())));
    }

    static Entry.Injected injected(Hunt hunt, Place place, Answer answer) {
        Subjects.Subject subject = hunt.subjects().of(place);
        double speedHz = subject.speedHz();
        return new Entry.Injected(place, speedHz, subject.frequencyHz(speedHz), 1, subject.expected(speedHz), answer,
                Optional.empty(), Optional.empty());
    }

    /** Measured, clipped on, played and read. */
    static Hunt inject(Hunt hunt, Place place, Answer answer) {
        Hunt clipped = hunt.after(NOON, new Entry.PinMeasured(place, 0.1));
        return clipped.after(NOON, injected(clipped, place, answer));
    }

    static Hunt good(Hunt hunt, int point) {
        Place place = new Place(false, point);
        return inject(hunt, place, Answer.value(hunt.subjects().of(place).expected(hunt.subjects().of(place).speedHz()).value()));
    }

    static Hunt bad(Hunt hunt, int point) {
        return inject(hunt, new Place(false, point), Answer.of(Answer.Kind.NOTHING));
    }
}
