package understudy.report;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.text.Times;
import understudy.trace.Conclusion;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Numbered;

/**
 * The record of a job, in the order in which it is read: what was found, how, and what was not proven. It says nothing
 * that the job's events do not hold. Immutable.
 */
public final class Report {

    private final String title;
    private final List<String> warnings;
    private final List<Section> sections;

    /** @param title a few words */
    record Section(String title, List<Part> parts) {
        Section {
            parts = List.copyOf(parts);
        }
    }

    private Report(String title, List<String> warnings, List<Section> sections) {
        this.title = title;
        this.warnings = List.copyOf(warnings);
        this.sections = List.copyOf(sections);
    }

    /**
     * @param written when
     * @param zone    in which times are told
     */
    public static Report of(Hunt hunt, Instant written, ZoneId zone) {
        Times times = new Times(zone);
        Findings findings = new Findings(hunt);
        Proceedings proceedings = new Proceedings(hunt, times);
        List<Section> sections = new ArrayList<>();
        sections.add(new Section("The job", List.of(new Part.Facts(facts(hunt, written, times)))));
        sections.add(new Section("Result", findings.result()));
        sections.add(new Section(Repair.all(hunt).isEmpty() ? "The circuit" : "The circuit as it was found",
                List.of(new Part.Drawing(CircuitDrawing.asFound(hunt)))));
        sections.add(new Section("Why the result is what it is", findings.reasons()));
        if (findings.aboutTheModule()) {
            sections.add(new Section("What was proven before the module may be called bad", findings.moduleProofs()));
        }
        if (!Repair.all(hunt).isEmpty()) {
            sections.add(new Section("The repair, and its proof", findings.repair(times)));
        }
        sections.add(new Section("What was not proven", List.of(new Part.Bullets(findings.unproven()))));
        sections.add(new Section("How it was done, and why that proves something", proceedings.method()));
        sections.add(new Section("What the signal came from", proceedings.equipment()));
        sections.add(new Section("All injections", proceedings.injections()));
        proceedings.remarks().ifPresent(remarks -> sections.add(new Section("Remarks", List.of(remarks))));
        sections.add(new Section("Cautions", proceedings.cautions()));
        return new Report("Report on job " + hunt.job().name(), warnings(hunt), sections);
    }

    private static List<String> warnings(Hunt hunt) {
        List<String> warnings = new ArrayList<>();
        if (closing(hunt).isEmpty()) {
            warnings.add("Unfinished: this job was not closed when the report was written. What is said here may still change.");
        }
        if (hunt.job().rehearsed()) {
            warnings.add("A rehearsal: for a part of this job at least no signal left the machine, so what was displayed then"
                    + " proves nothing of a real circuit.");
        }
        if (!hunt.methodProven()) {
            warnings.add("The method was not proven on a circuit that works: a reading that looks bad may be the rig's fault.");
        }
        if (!hunt.clashes().isEmpty()) {
            warnings.add("Some readings contradict each other: " + String.join("; ", Conclusion.clashes(hunt))
                    + ". With one fault in the circuit they can't all be right.");
        }
        return warnings;
    }

    private static List<Part.Fact> facts(Hunt hunt, Instant written, Times times) {
        List<Part.Fact> facts = new ArrayList<>();
        facts.add(new Part.Fact("Vehicle", stated(hunt.job().vehicle())));
        facts.add(new Part.Fact("Complaint", stated(hunt.job().complaint())));
        facts.add(new Part.Fact("Circuit", hunt.circuit().title()));
        facts.add(new Part.Fact("Done by", stated(hunt.job().who())));
        facts.add(new Part.Fact("Begun", times.withZone(hunt.job().begun())));
        facts.add(new Part.Fact("Closed", closing(hunt).map(event -> times.withZone(event.at())).orElse("not yet")));
        facts.add(new Part.Fact("Report written", times.withZone(written) + "; all times are local, in " + times.zone().getId()));
        return facts;
    }

    private static String stated(String words) {
        return words.isBlank() ? "not stated" : words;
    }

    private static Optional<Numbered> closing(Hunt hunt) {
        return hunt.standing().stream().filter(event -> event.entry() instanceof Entry.Closed).findFirst();
    }

    String title() {
        return title;
    }

    /** What has to be known before anything else is read, a sentence or two each; often none. */
    List<String> warnings() {
        return warnings;
    }

    List<Section> sections() {
        return sections;
    }
}
