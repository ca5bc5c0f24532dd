package understudy.store;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Deed;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.text.Json;
import understudy.text.Source;
import understudy.trace.EntryText;
import understudy.trace.Hunt;
import understudy.trace.Job;

/**
 * A job as a file of JSON, with nothing left out. When it is read, whatever is wrong is said with its place; a job that
 * can't have been is refused.
 */
public final class JobFile {

    private static final String FORMAT = "understudy job";
    private static final int VERSION = 1;

    private record JobText(String format, int version, String name, Instant begun, String vehicle, String complaint, String who,
            SubjectText suspect, Optional<SubjectText> reference, EquipmentText equipment, List<EventText> events) {}

    private record SubjectText(SourceText circuit, SourceText pattern) {}

    private record SourceText(String file, String text) {}

    private record EquipmentText(Optional<String> rig, Optional<String> input, BigDecimal pinFromVolts, BigDecimal pinToVolts,
            List<String> words) {}

    private record EventText(int number, Instant at, String kind, Map<String, String> values) {}

    private static final Remedy NO_JOB = Remedy.of("take a file that was written by ").perform(Deed.EXPORT_JOB, "");

    private final String file;

    private JobFile(String file) {
        this.file = file;
    }

    /** The text of a job's file. */
    public static String text(Job job) {
        Job.Equipment equipment = job.equipment();
        return Json.text(new JobText(FORMAT, VERSION, job.name(), job.begun(), job.vehicle(), job.complaint(), job.who(),
                text(job.suspect()), job.reference().map(JobFile::text),
                new EquipmentText(equipment.rig(), equipment.input(), BigDecimal.valueOf(equipment.pinVolts().from()), BigDecimal.valueOf(equipment.pinVolts().to()),
                        equipment.words()),
                IntStream.range(0, job.events().size()).mapToObj(i -> text(i + 1, job.events().get(i))).toList())) + "\n";
    }

    private static SubjectText text(Job.Subject subject) {
        return new SubjectText(text(subject.circuit()), text(subject.pattern()));
    }

    private static SourceText text(Source source) {
        return new SourceText(source.fileName(), source.text());
    }

    private static EventText text(int number, Job.Event event) {
        EntryText entry = EntryText.of(event.entry());
        return new EventText(number, event.at(), entry.kind(), new TreeMap<>(entry.values()));
    }

    /**
     * @param as the name that it gets, if not its own
     * @throws Refused when this is no such file, with the place and what to do
     */
    public static Job read(String file, Optional<String> as) {
        return new JobFile(file).job(as);
    }

    private Job job(Optional<String> as) {
        Map<String, Object> all = json();
        if (all == null || !FORMAT.equals(all.get("format"))) {
            throw wrong("this is no job", NO_JOB);
        } else if (!Integer.valueOf(VERSION).equals(all.get("version"))) {
            throw wrong("version " + all.get("version") + " is not known, only " + VERSION, "a newer Understudy may know it");
        }
        Map<String, Object> equipment = map(all, "", "equipment");
        Job bare = new Job(as.orElseGet(() -> text(all, "", "name")), time(all, "", "begun"), text(all, "", "vehicle"),
                text(all, "", "complaint"), text(all, "", "who"), subject(map(all, "", "suspect"), "suspect."),
                all.get("reference") == null ? Optional.empty() : Optional.of(subject(map(all, "", "reference"), "reference.")),
                new Job.Equipment(maybe(equipment, "rig"), maybe(equipment, "input"), pin(equipment), words(equipment)), List.of());
        return events(bare, list(all, "", "events"));
    }

    private Map<String, Object> json() {
        try {
            return Json.read(Files.readString(Path.of(file)), file);
        } catch (NoSuchFileException | InvalidPathException e) {
            throw wrong("there is no such file", "see to its name and folder");
        } catch (CharacterCodingException e) {
            throw wrong("this is no job", NO_JOB.then(", ending in .json"));
        } catch (IOException e) {
            throw Refused.setup(file, "it can't be read: " + e.getMessage(), "", e);
        }
    }

    /** As they happened, one after the other: what could not happen then can't be taken in now. */
    private Job events(Job bare, List<?> written) {
        Hunt hunt;
        try {
            hunt = Hunt.of(bare);
        } catch (Refused e) {
            throw wrong("in it, " + e.wrong(), e.right());
        }
        for (Object one : written) {
            int number = hunt.events().size() + 1;
            String place = "events " + number + ", ";
            Map<String, Object> event = map(one, "events " + number);
            Map<String, String> values = new LinkedHashMap<>();
            Map<String, Object> named = map(event, place, "values");
            named.keySet().forEach(name -> values.put(name, text(named, place + "values.", name)));
            Instant at = time(event, place, "at");
            try {
                hunt = hunt.after(at, new EntryText(text(event, place, "kind"), values).entry());
            } catch (Refused e) {
                throw wrong(place.replace(", ", ": ") + e.wrong(), "the file was changed, or damaged; export the job again");
            }
        }
        return hunt.job();
    }

    private Job.Subject subject(Map<String, Object> subject, String place) {
        return new Job.Subject(source(map(subject, place, "circuit"), place + "circuit."),
                source(map(subject, place, "pattern"), place + "pattern."));
    }

    private Source source(Map<String, Object> written, String place) {
        return new Source(text(written, place, "file"), text(written, place, "text"));
    }

    private Range pin(Map<String, Object> equipment) {
        double from = number(equipment, "equipment.", "pinFromVolts");
        double to = number(equipment, "equipment.", "pinToVolts");
        if (!(from <= to)) {
            throw wrong("equipment.pinFromVolts: " + from + " is above pinToVolts", "swap them");
        }
        return new Range(from, to, Unit.VOLT);
    }

    private List<String> words(Map<String, Object> equipment) {
        List<String> words = new ArrayList<>();
        for (Object line : list(equipment, "equipment.", "words")) {
            words.add(value(line, String.class, "equipment.words", "a text"));
        }
        return words;
    }

    private Optional<String> maybe(Map<String, Object> map, String key) {
        return map.get(key) == null ? Optional.empty() : Optional.of(text(map, "equipment.", key));
    }

    private String text(Map<String, Object> map, String place, String key) {
        return value(map.get(key), String.class, place + key, "a text");
    }

    private double number(Map<String, Object> map, String place, String key) {
        return value(map.get(key), Number.class, place + key, "a number").doubleValue();
    }

    private Instant time(Map<String, Object> map, String place, String key) {
        String written = text(map, place, key);
        try {
            return Instant.parse(written);
        } catch (DateTimeParseException e) {
            throw wrong(place + key + ": \"" + written + "\" is no time", "write it like 2026-03-01T12:00:00Z");
        }
    }

    private List<?> list(Map<String, Object> map, String place, String key) {
        return value(map.get(key), List.class, place + key, "a list");
    }

    private Map<String, Object> map(Map<String, Object> map, String place, String key) {
        return map(map.get(key), place + key);
    }

    @SuppressWarnings("unchecked") // JSON has no other keys than texts
    private Map<String, Object> map(Object written, String place) {
        return value(written, Map.class, place, "an object in braces");
    }

    private <T> T value(Object written, Class<T> type, String place, String what) {
        if (written == null) {
            throw wrong(place + " is missing", what + " belongs there; the file may have been changed; export the job again");
        } else if (!type.isInstance(written)) {
            throw wrong(place + ": \"" + written + "\" will not do", what + " belongs there");
        }
        return type.cast(written);
    }

    private Refused wrong(String wrong, String right) {
        return wrong(wrong, Remedy.of(right));
    }

    private Refused wrong(String wrong, Remedy remedy) {
        return new Refused(new Refusal(Location.named(file), wrong, remedy));
    }
}
