package understudy.cli;

import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import understudy.text.Source;
import understudy.trace.EntryText;
import understudy.trace.Job;

/** A job as JSON, with nothing left out; {@link JobFile} reads it. */
final class JobJson {

    static final String FORMAT = "understudy job";
    static final int VERSION = 1;

    private JobJson() {}

    static Map<String, Object> of(Job job) {
        Job.Equipment equipment = job.equipment();
        return Json.map(
                "format", FORMAT,
                "version", VERSION,
                "name", job.name(),
                "begun", job.begun().toString(),
                "vehicle", job.vehicle(),
                "complaint", job.complaint(),
                "who", job.who(),
                "suspect", subject(job.suspect()),
                "reference", job.reference().map(JobJson::subject).orElse(null),
                "equipment", Json.map(
                        "rig", equipment.rig().orElse(null),
                        "input", equipment.input().orElse(null),
                        "pinFromVolts", equipment.pinVolts().from(),
                        "pinToVolts", equipment.pinVolts().to(),
                        "words", equipment.words()),
                "events", IntStream.range(0, job.events().size()).mapToObj(i -> event(i + 1, job.events().get(i))).toList());
    }

    private static Map<String, Object> subject(Job.Subject subject) {
        return Json.map("circuit", file(subject.circuit()), "pattern", file(subject.pattern()));
    }

    private static Map<String, Object> file(Source file) {
        return Json.map("file", file.fileName(), "text", file.text());
    }

    private static Map<String, Object> event(int number, Job.Event event) {
        EntryText text = EntryText.of(event.entry());
        return Json.map("number", number, "at", event.at().toString(), "kind", text.kind(), "values", new TreeMap<>(text.values()));
    }
}
