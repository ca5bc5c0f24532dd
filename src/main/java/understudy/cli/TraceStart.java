package understudy.cli;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.reading.Reading;
import understudy.refusal.Refused;
import understudy.store.Store;
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

    /** What the command line says of a job; empty: to be asked. */
    record Told(Optional<String> name, Optional<String> vehicle, Optional<String> complaint, Optional<String> who) {}

    /** Asks what is not told, and begins the job. */
    Hunt begin(Told told, TraceEquipment equipment, TraceTalk talk, Store store, Surroundings surroundings) {
        Circuit circuit = suspect().circuit();
        talk.gap();
        talk.lines(Paragraph.lines(circuit.title()));
        talk.gap();
        talk.say("What is not known yet; Enter skips it. Type stop at any question to leave.");
        String vehicle = told.vehicle().orElseGet(() -> asked("Vehicle" + offer(circuit.vehicle()) + ":",
                "Which vehicle it is, as you would find it again: its name, plate or number.", circuit.vehicle(), talk));
        String complaint = told.complaint().orElseGet(() -> asked("Complaint:",
                "What is wrong, in the customer's words or the module's code.", Optional.empty(), talk));
        String who = told.who().orElseGet(() -> asked("Who does the work:",
                "The name that stands under the report.", Optional.empty(), talk));
        String free = free(circuit.id() + "-" + LocalDate.now(surroundings.clock()), store);
        String name = told.name().orElseGet(() -> asked("Name of the job" + offer(Optional.of(free)) + ":",
                "By this name you resume the job, and find its report.", Optional.of(free), talk));
        return store.jobs().begin(new Job(name, surroundings.clock().instant(), vehicle, complaint, who, suspect, reference,
                equipment.record(equipment.pins(circuit).allowed()), List.of()));
    }

    private static String offer(Optional<String> otherwise) {
        return otherwise.map(value -> " (Enter: " + value + ")").orElse("");
    }

    private static String asked(String sentence, String why, Optional<String> otherwise, TraceTalk talk) {
        Question<String> question = new Question<>(sentence, why, new Answers.Words(false, "kept with the job, and in its report"),
                Optional.of(otherwise.orElse("")));
        return new Dialogue(talk::lineOrStop, talk::say).ask(question).orElseThrow();
    }

    /** The first name that no job has. */
    private static String free(String name, Store store) {
        String free = name;
        for (int number = 2; store.jobs().has(free); number++) {
            free = name + "-" + number;
        }
        return free;
    }
}
