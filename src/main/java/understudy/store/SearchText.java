package understudy.store;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import understudy.trace.Entry;
import understudy.trace.Job;

/** What a job is found by: its words, a line each, in letters that are alike whatever their case. */
final class SearchText {

    private SearchText() {}

    static String of(Job job, String circuitTitle) {
        List<String> lines = new ArrayList<>(List.of(job.name(), job.vehicle(), job.complaint(), job.who(), circuitTitle));
        job.events().forEach(event -> lines.addAll(words(event.entry())));
        return alike(String.join("\n", lines));
    }

    static String of(Entry entry) {
        return alike(String.join("\n", words(entry)));
    }

    private static List<String> words(Entry entry) {
        if (entry instanceof Entry.Noted noted) {
            return List.of(noted.words());
        } else if (entry instanceof Entry.Corrected corrected) {
            return List.of(corrected.words());
        } else if (entry instanceof Entry.Repaired repaired) {
            return List.of(repaired.words());
        } else if (entry instanceof Entry.Closed closed) {
            return List.of(closed.words());
        } else if (entry instanceof Entry.WentOn wentOn) {
            return List.of(wentOn.reason());
        } else if (entry instanceof Entry.Withdrawn withdrawn) {
            return List.of(withdrawn.reason());
        } else if (entry instanceof Entry.Proven proven) {
            return List.of(proven.how());
        }
        return List.of();
    }

    /** The words to search for: every one must be found. */
    static List<String> asked(String words) {
        return Arrays.stream(alike(words).split("\\s+")).filter(word -> !word.isEmpty()).toList();
    }

    /** What two names have in common that are the same but for case and blanks. */
    static String key(String name) {
        return String.join(" ", asked(name));
    }

    /** Capital letters first, since some small ones share a capital, as both Greek sigmas do. */
    static String alike(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFKC).toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
    }
}
