package understudy.question;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Result;

/**
 * Something that is asked of a person. A front end shows it, reads until {@link #answer} gives a value, and explains it to
 * whoever asks why. Immutable.
 *
 * @param sentence  what is asked, as it is shown, without what may be answered
 * @param why       why it is asked, a sentence or two
 * @param answers   what may be answered
 * @param otherwise the answer of who types nothing; empty if something must be typed
 * @param <T>       what an answer is once it is read
 */
public record Question<T>(String sentence, String why, Answers<T> answers, Optional<T> otherwise) {

    private static final Set<String> ASKS_WHY = Set.of("?", "help");

    public static Question<Boolean> yesNo(String sentence, String why, String yesMeans, String noMeans) {
        return new Question<>(sentence, why, new Answers.YesNo(yesMeans, noMeans), Optional.empty());
    }

    /** The same with an answer for who types nothing. */
    public Question<T> otherwise(T value) {
        return new Question<>(sentence, why, answers, Optional.of(value));
    }

    /** Whether this is no answer but asks what the question means; so it is at every question. */
    public static boolean asksWhy(String typed) {
        return ASKS_WHY.contains(Typing.plain(typed));
    }

    /** The answer, or why it is none; asking what the question means is never an answer. */
    public Result<T> answer(String typed) {
        String line = typed.strip();
        if (asksWhy(line)) {
            return Result.refused(List.of(new Refusal(Location.NOWHERE, "\"" + line + "\" asks what the question means", why)));
        }
        return line.isEmpty() && otherwise.isPresent() ? Result.of(otherwise.get()) : answers.read(line);
    }
}
