package understudy.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.reading.DisplayUnit;
import understudy.reading.Expected;
import understudy.text.Source;
import understudy.trace.Answer;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Job;
import understudy.trace.Place;
import understudy.trace.Proof;

/** Jobs made step by step on circuits of any length, a minute between steps, on the bench of the demonstration. */
final class Sample {

    static final ZoneId ZONE = ZoneId.of("Europe/Berlin");
    /** 13:00 in Berlin, where it is winter. */
    static final Instant BEGUN = Instant.parse("2026-03-01T12:00:00Z");
    /** 49 to 51 km/h are good. */
    static final Expected DUE = new Expected(50, 49, 51, 1, DisplayUnit.KMH);

    private Hunt hunt;
    private Instant at = BEGUN;

    private Sample(Hunt hunt) {
        this.hunt = hunt;
    }

    /** The speedometer of the bench: five points, the wheel's circuit as reference. */
    static Sample speedometer() {
        return of(shipped("circuits/fieldhand-4-speedometer"), true, "Speedometer drops to zero on rough ground");
    }

    static Sample speedometer(String complaint, String who) {
        return new Sample(Hunt.of(job(shipped("circuits/fieldhand-4-speedometer"), true, complaint, who)));
    }

    /** Points that are called so, wires between them called "wire 1" and on, no reference. */
    static Sample wires(List<String> points) {
        return of(new Source("wires.yaml", circuit(points, "")), false, "None");
    }

    /** The same job by another name. */
    Sample called(String name) {
        Job job = hunt.job();
        hunt = Hunt.of(new Job(name, job.begun(), job.vehicle(), job.complaint(), job.who(), job.suspect(), job.reference(),
                job.equipment(), job.events()));
        return this;
    }

    static String circuit(List<String> points, String atSecond) {
        StringBuilder text = new StringBuilder("""
                title: Test circuit
                source: Made up.
                pattern: output-shaft-17-vr
                reading: {shows: vehicle speed, unit: km/h, teeth: 17, axle-ratio: 4.1, rolls: 1.927 m, step: 1 km/h}
                path:
                """);
        for (int i = 0; i < points.size(); i++) {
            text.append(i == 0 ? "" : "  - wire: wire " + i + "\n");
            text.append("  - point: \"").append(points.get(i)).append("\"\n");
            text.append(i == 1 && !atSecond.isEmpty() ? "    " + atSecond + "\n" : "    reach: 2 min\n");
        }
        return text.toString();
    }

    static Sample of(Source circuit, boolean reference, String complaint) {
        return new Sample(Hunt.of(job(circuit, reference, complaint, "A. Student")));
    }

    private static Job job(Source circuit, boolean reference, String complaint, String who) {
        Job.Subject suspect = new Job.Subject(circuit, shipped("output-shaft-17-vr"));
        Optional<Job.Subject> other = reference ? Optional.of(new Job.Subject(shipped("circuits/fieldhand-4-wheel-rear-left"),
                shipped("wheel-speed-44-vr"))) : Optional.empty();
        return new Job("speedometer", BEGUN, "Fieldhand 4", complaint, who, suspect, other,
                new Job.Equipment(Optional.of("bench box"), Optional.of("reluctor-adaptive"), new Range(-0.5, 3, Unit.VOLT),
                        List.of("Output: left channel, full scale 1.41 V, calibrated 2026-02-27 by meter",
                                "Box: 1.5 kohm in series, 1 kohm across the clips")), List.of());
    }

    private static Source shipped(String name) {
        try {
            return new Source(name + ".yaml", Files.readString(Path.of("patterns", name + ".yaml")));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Sample then(Entry entry) {
        at = at.plusSeconds(60);
        hunt = hunt.after(at, entry);
        return this;
    }

    Sample cautioned() {
        return then(new Entry.Cautioned(hunt.hazards()));
    }

    Sample reference(Answer answer) {
        return inject(new Place(true, 0), answer, Optional.empty());
    }

    Sample at(int point, Answer answer) {
        return inject(new Place(false, point), answer, Optional.empty());
    }

    Sample good(int point) {
        return at(point, Answer.value(50));
    }

    Sample bad(int point) {
        return at(point, Answer.of(Answer.Kind.NOTHING));
    }

    Sample moved(int point, int suspect) {
        return inject(new Place(false, point), Answer.of(Answer.Kind.COMES_AND_GOES), Optional.of(suspect));
    }

    private Sample inject(Place place, Answer answer, Optional<Integer> moved) {
        then(new Entry.PinMeasured(place, 0.02));
        return then(new Entry.Injected(place, 23.3, 396.7, 1, DUE, answer, Optional.of(0.98), moved));
    }

    Sample withdraw(int number, String reason) {
        return then(new Entry.Withdrawn(number, reason));
    }

    Sample repaired(String words) {
        return then(new Entry.Repaired(words));
    }

    Sample proveAll() {
        for (Proof proof : Proof.values()) {
            then(new Entry.Proven(proof, "seen with meter, " + proof.key()));
        }
        return this;
    }

    Sample closed() {
        return then(new Entry.Closed("Handed over.", Optional.of(true)));
    }

    Hunt hunt() {
        return hunt;
    }

    Report report() {
        return Report.of(hunt, at.plusSeconds(60), ZONE);
    }
}
