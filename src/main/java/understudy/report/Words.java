package understudy.report;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.trace.Numbered;

/** Lists in sentences. */
final class Words {

    private Words() {}

    /** "step 3", "steps 3 and 5", "steps 3, 5 and 8"; empty for none. */
    static Optional<String> steps(List<Integer> numbers) {
        if (numbers.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of((numbers.size() == 1 ? "step " : "steps ") + and(numbers.stream().map(String::valueOf).toList()));
    }

    static String stepsOf(List<Numbered> events) {
        return steps(events.stream().map(Numbered::number).toList()).orElseThrow();
    }

    /** "a", "a and b", "a, b and c". */
    static String and(List<String> names) {
        int last = names.size() - 1;
        return last < 1 ? String.join("", names)
                : names.subList(0, last).stream().collect(Collectors.joining(", ")) + " and " + names.get(last);
    }

    static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, words.offsetByCodePoints(0, 1)).toUpperCase(java.util.Locale.ROOT)
                + words.substring(words.offsetByCodePoints(0, 1));
    }
}
