package understudy.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import understudy.hunt.HuntBeginning;
import understudy.hunt.HuntKit;
import understudy.reading.Reading;
import understudy.refusal.Refused;
import understudy.store.Store;
import understudy.text.Paragraph;
import understudy.trace.Circuit;
import understudy.trace.CircuitFiles;
import understudy.trace.CircuitReader;
import understudy.trace.Hunt;
import understudy.trace.Job;
import understudy.trace.Subjects.Subject;

/** The beginning of a hunt: its circuits read, and what is not known of the job asked. */
final class TraceStart {

    private final Job.Subject suspect;
    private final Optional<Job.Subject> reference;

    /** @throws Refused with all that is wrong with the files */
    TraceStart(String circuit) {
        suspect = CircuitFiles.find(circuit);
        reference = CircuitFiles.reference(suspect);
    }

    private TraceStart(Job.Subject suspect, Optional<Job.Subject> reference) {
        this.suspect = suspect;
        this.reference = reference;
    }

    /** The same, with another reading expected of the suspect circuit; the job keeps the circuit so. */
    TraceStart expecting(Reading reading) {
        return new TraceStart(new Job.Subject(CircuitReader.expecting(suspect.circuit(), reading), suspect.pattern()), reference);
    }

    Subject suspect() {
        return CircuitFiles.read(suspect);
    }

    Optional<Subject> reference() {
        return reference.map(CircuitFiles::read);
    }

    /**
     * Asks what is not known, and begins the job.
     *
     * @param known what the command line says of it
     */
    Hunt begin(Map<HuntBeginning.Item, String> known, HuntKit equipment, TraceTalk talk, Store store, Surroundings surroundings) {
        Circuit circuit = suspect().circuit();
        talk.gap();
        talk.lines(Paragraph.lines(circuit.title()));
        talk.gap();
        talk.say("What is not known yet; Enter skips it. Type stop at any question to leave.");
        HuntBeginning beginning = new HuntBeginning(circuit,
                store.jobs().free(circuit.id() + "-" + LocalDate.now(surroundings.clock())), known);
        while (beginning.next().isPresent()) {
            beginning = beginning.after(talk.askOrLeave(beginning.question()));
        }
        Map<HuntBeginning.Item, String> said = beginning.known();
        return store.jobs().begin(new Job(said.get(HuntBeginning.Item.NAME), surroundings.clock().instant(),
                said.get(HuntBeginning.Item.VEHICLE), said.get(HuntBeginning.Item.COMPLAINT), said.get(HuntBeginning.Item.WHO),
                suspect, reference, equipment.record(equipment.pins(circuit).allowed()), List.of()));
    }
}
