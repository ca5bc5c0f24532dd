package understudy.trace;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** Lists in sentences. */
public final class Listing {

    private Listing() {}

    /** "step 3", "steps 3 and 5", "steps 3, 5 and 8"; empty for none. */
    public static Optional<String> steps(List<Integer> numbers) {
        if (numbers.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of((numbers.size() == 1 ? "step " : "steps ") + and(numbers.stream().map(String::valueOf).toList()));
    }

    public static String stepsOf(List<Numbered> events) {
        return steps(events.stream().map(Numbered::number).toList()).orElseThrow();
    }

    /** "a", "a and b", "a, b and c". */
    public static String and(List<String> names) {
        int last = names.size() - 1;
        return last < 1 ? String.join("", names)
                : names.subList(0, last).stream().collect(Collectors.joining(", ")) + " and " + names.get(last);
    }

    public static String capital(String words) {
        return words.isEmpty() ? words : words.substring(0, words.offsetByCodePoints(0, 1)).toUpperCase(Locale.ROOT)
                + words.substring(words.offsetByCodePoints(0, 1));
    }
}
