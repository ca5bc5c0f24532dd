package understudy.hunt;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import understudy.reading.Reading;
import understudy.refusal.Refused;
import understudy.trace.CircuitFiles;
import understudy.trace.CircuitReader;
import understudy.trace.Job;
import understudy.trace.Subjects.Subject;

/** The circuits of a hunt that begins, as their files say: the suspect one, and the one that proves the method. Immutable. */
public final class HuntCircuits {

    private final Job.Subject suspect;
    private final Optional<Job.Subject> reference;

    /** @throws Refused with all that is wrong with the files */
    public HuntCircuits(String circuit) {
        suspect = CircuitFiles.find(circuit);
        reference = CircuitFiles.reference(suspect);
    }

    private HuntCircuits(Job.Subject suspect, Optional<Job.Subject> reference) {
        this.suspect = suspect;
        this.reference = reference;
    }

    /** The same, with another reading expected of the suspect circuit; the job keeps the circuit so. */
    public HuntCircuits expecting(Reading reading) {
        return new HuntCircuits(new Job.Subject(CircuitReader.expecting(suspect.circuit(), reading), suspect.pattern()), reference);
    }

    public Subject suspect() {
        return CircuitFiles.read(suspect);
    }

    public Optional<Subject> reference() {
        return reference.map(CircuitFiles::read);
    }

    /** The job that begins with what is known. @param equipment what its signals come from */
    public Job job(Map<HuntBeginning.Item, String> known, HuntKit equipment, Instant begun) {
        return new Job(known.get(HuntBeginning.Item.NAME), begun, known.get(HuntBeginning.Item.VEHICLE),
                known.get(HuntBeginning.Item.COMPLAINT), known.get(HuntBeginning.Item.WHO), suspect, reference,
                equipment.record(equipment.pins(suspect().circuit()).allowed()), List.of());
    }
}
