package understudy.trace;

import understudy.refusal.Location;
import java.util.Optional;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.PatternReader;
import understudy.refusal.Refused;
import understudy.reading.Expected;
import understudy.reading.SignalFrequency;
import understudy.refusal.Result;

/** The circuits of a job, read: the suspect one, and the one that proves the method. */
public record Subjects(Subject suspect, Optional<Subject> reference) {

    /** A circuit with the pattern that stands in for its sensor. */
    public record Subject(Circuit circuit, Pattern pattern) {

        /** @throws Refused when one of them can't be read, or they do not go together */
        public static Subject of(Job.Subject kept) {
            Circuit circuit = value(CircuitReader.read(kept.circuit()));
            Subject subject = new Subject(circuit, value(PatternReader.read(kept.pattern())));
            subject.expected(subject.speedHz());
            return subject;
        }

        /** The output that is injected. */
        public Output output() {
            return circuit.outputName().map(name -> pattern.outputs().stream().filter(output -> output.name().equals(name))
                    .findFirst().orElseThrow(() -> new Refused(
                            circuit.id() + ": pattern " + pattern.id() + " has no output \"" + name + "\"",
                            "it has " + String.join(", ", pattern.outputs().stream().map(Output::name).toList()))))
                    .orElse(pattern.outputs().get(0));
        }

        /** Turns per second of the pattern, at which it is injected. */
        public double speedHz() {
            try {
                return circuit.speed().map(pattern.speed()::parseHz).orElse(pattern.speed().defaultHz());
            } catch (Refused e) {
                throw e.in(Location.named(circuit.id()));
            }
        }

        /** Events a second, as the module counts them. */
        public double frequencyHz(double speedHz) {
            return SignalFrequency.hz(output(), speedHz).orElseThrow(() -> new Refused(
                    circuit.id() + ": no display can be foretold from output " + output().name() + " of pattern " + pattern.id(),
                    "take an output with teeth, or a tone"));
        }

        /** What the display should show. */
        public Expected expected(double speedHz) {
            return circuit.reading().expected(frequencyHz(speedHz)).orElseThrow(() -> new Refused(
                    circuit.id() + ": its reading says nothing of " + pattern.speed().print(speedHz),
                    "inject another speed, or let the reading's table go so far"));
        }
    }

    static Subjects of(Job job) {
        return new Subjects(Subject.of(job.suspect()), job.reference().map(Subject::of));
    }

    /** The one that a place is on. */
    public Subject of(Place place) {
        return place.onReference() ? reference.orElseThrow() : suspect;
    }

    private static <T> T value(Result<T> result) {
        return result.value().orElseThrow(() -> new Refused(result.problems()));
    }
}
