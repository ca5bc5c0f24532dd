package understudy.view;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import understudy.store.JobLine;
import understudy.text.Paragraph;
import understudy.text.Table;
import understudy.text.Times;
import understudy.trace.EventWords;
import understudy.trace.Hunt;
import understudy.trace.Job;
import understudy.trace.NextStep;
import understudy.trace.Numbered;
import understudy.trace.Proof;
import understudy.trace.Unproven;

/** A job in words. */
public final class JobText {

    private static final int VEHICLE_LETTERS = 24;

    private final Hunt hunt;
    private final Times times;

    public JobText(Hunt hunt, Times times) {
        this.hunt = hunt;
        this.times = times;
    }

    /** What somebody typed, without what would break a line or steer the screen. */
    public static String oneLine(String typed) {
        return typed.replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
    }

    public static String clipped(String typed, int letters) {
        String line = oneLine(typed);
        return line.length() <= letters ? line : line.substring(0, letters - 3).stripTrailing() + "...";
    }

    /** "17 steps". */
    public static String steps(int count) {
        return count == 1 ? "1 step" : count + " steps";
    }

    public List<String> lines(JobLine line) {
        List<String> lines = new ArrayList<>();
        Job job = hunt.job();
        fact(lines, "job", job.name());
        fact(lines, "begun", times.withZone(job.begun()) + (line.archived() ? ", archived" : ""));
        fact(lines, "vehicle", job.vehicle());
        fact(lines, "complaint", job.complaint());
        fact(lines, "who", job.who());
        fact(lines, "circuit", hunt.circuit().title());
        hunt.subjects().reference().ifPresent(reference -> fact(lines, "reference", reference.circuit().title()));
        job.equipment().words().forEach(words -> fact(lines, "with", words));
        fact(lines, "state", line.state());
        happened(lines);
        lines.add("");
        lines.add("suspects:");
        lines.addAll(new HuntText(hunt).suspects());
        lines.addAll(new HuntText(hunt).clashes());
        lines.add("");
        lines.addAll(Paragraph.lines("next: ", "      ", next()));
        if (hunt.next() instanceof NextStep.Ended) {
            lines.add("");
            lines.add("not proven:");
            Unproven.of(hunt).forEach(sentence -> lines.addAll(Paragraph.lines("  ", "  ", sentence)));
        }
        return lines;
    }

    private static void fact(List<String> lines, String what, String typed) {
        if (!typed.isBlank()) {
            String first = (what + " ".repeat(11)).substring(0, 11);
            lines.addAll(Paragraph.lines(first, " ".repeat(11), oneLine(typed)));
        }
    }

    private void happened(List<String> lines) {
        lines.add("");
        lines.add(hunt.events().isEmpty() ? "nothing happened yet" : "what happened:");
        for (Numbered event : hunt.events()) {
            lines.addAll(Paragraph.lines(String.format(Locale.ROOT, "%3d  %s  ", event.number(), times.withZone(event.at())), " ".repeat(5),
                    (event.standing() ? "" : "(withdrawn) ") + oneLine(EventWords.reasoned(hunt, event))));
        }
    }

    private String next() {
        NextStep next = hunt.next();
        if (next instanceof NextStep.Caution) {
            return "read the cautions, and tick them.";
        } else if (next instanceof NextStep.Inject inject) {
            return (inject.measured() ? "inject" : "measure the pin, then inject") + " at "
                    + (inject.place().onReference() ? "the reference circuit's " : "") + hunt.name(inject.place()) + ". "
                    + inject.reason();
        } else if (next instanceof NextStep.Prove prove) {
            return "prove before the module is called bad: "
                    + String.join(", ", prove.outstanding().stream().map(Proof::key).toList()) + ".";
        } else if (next instanceof NextStep.Repair repair) {
            return "repair " + repair.finding().names() + ".";
        } else if (next instanceof NextStep.Close) {
            return "close the job; the repair is proven.";
        }
        return "nothing; the job is closed.";
    }

    private record Listed(String name, Instant begun, Instant changed, String vehicle, String complaint, String who, String circuit,
            int events, String state, boolean closed, boolean archived) {}

    private record Jobs(List<Listed> jobs) {}

    /** Jobs as a table, a line each. */
    public static List<String> table(List<JobLine> jobs, Times times) {
        Table table = new Table();
        jobs.forEach(job -> table.row(oneLine(job.name()), times.withZone(job.changed()), clipped(job.vehicle(), VEHICLE_LETTERS),
                job.state() + (job.archived() ? " (archived)" : "")));
        return table.lines();
    }

    /** The same for scripts. */
    public static Object listed(List<JobLine> jobs) {
        return new Jobs(jobs.stream().map(job -> new Listed(job.name(), job.begun(), job.changed(), job.vehicle(), job.complaint(),
                job.who(), job.circuitTitle(), job.events(), job.state(), job.closed(), job.archived())).toList());
    }
}
