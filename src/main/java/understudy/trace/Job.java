package understudy.trace;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.quantity.Range;
import understudy.text.Source;

/**
 * One fault hunt on one circuit: what it set out from, and all that happened. Whatever else can be said of it follows from
 * that. Immutable.
 *
 * @param name      unique among the user's jobs
 * @param begun     when
 * @param vehicle   which one, in the user's words, as last corrected; may be empty
 * @param complaint likewise
 * @param who       does the work; likewise
 * @param suspect   the circuit that is suspected
 * @param reference the one on which the method is proven first
 * @param equipment what the signal comes from
 * @param events    in order; an event's number is its place in the list, from 1
 */
public record Job(
        String name,
        Instant begun,
        String vehicle,
        String complaint,
        String who,
        Subject suspect,
        Optional<Subject> reference,
        Equipment equipment,
        List<Event> events) {

    /** An entry with its time. */
    public record Event(Instant at, Entry entry) {}

    /**
     * A circuit with the pattern that stands in for its sensor, as they were when the job began: the texts of their files.
     */
    public record Subject(Source circuit, Source pattern) {}

    /**
     * @param rig   the rig's name, if one is used
     * @param input the module's input in the words of the command line, if it is known
     * @param pinVolts what may lie on the pins before one clips on
     * @param words what rig, calibration and way of playing are, for the record: a line each
     */
    public record Equipment(Optional<String> rig, Optional<String> input, Range pinVolts, List<String> words) {
        public Equipment {
            words = List.copyOf(words);
        }
    }

    /** Stands in the equipment's words, or in a note on it, where the signal went nowhere: a record must not hide that. */
    public static final String REHEARSED = "nothing leaves the machine";

    public Job {
        events = List.copyOf(events);
    }

    /** Whether the signal was only rehearsed, at least for a part of the job. */
    public boolean rehearsed() {
        return equipment.words().stream().anyMatch(words -> words.endsWith(REHEARSED)) || events.stream()
                .anyMatch(event -> event.entry() instanceof Entry.Noted noted && noted.words().endsWith(REHEARSED));
    }

    /** The same job with one thing more. */
    public Job with(Instant at, Entry entry) {
        List<Event> more = new ArrayList<>(events);
        more.add(new Event(at, entry));
        return new Job(name, begun, corrected(Detail.VEHICLE, vehicle, entry), corrected(Detail.COMPLAINT, complaint, entry),
                corrected(Detail.WHO, who, entry), suspect, reference, equipment, more);
    }

    private static String corrected(Detail detail, String words, Entry entry) {
        return entry instanceof Entry.Corrected corrected && corrected.detail() == detail ? corrected.words() : words;
    }
}
