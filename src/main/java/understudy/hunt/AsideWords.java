package understudy.hunt;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import understudy.question.Answers.Meaning;
import understudy.trace.Detail;

/** The words that go at every question of a hunt. */
final class AsideWords {

    static final List<Meaning> MEANINGS = List.of(
            new Meaning("where", "how the hunt stands: circuit, suspects, steps"),
            new Meaning("other", "inject at another point, chosen by its number"),
            new Meaning("again", "the last reading does not count: read it once more"),
            new Meaning("withdraw 4", "step 4 does not count; you are asked why"),
            new Meaning("note ...", "keeps these words with the job"),
            new Meaning("correct who ...", "sets right who does the work; or correct vehicle ..., correct complaint ..."),
            new Meaning("close", "ends the job as it stands"),
            new Meaning("stop", "leaves; the job is kept, and you can resume it"),
            new Meaning("?", "these words"));

    private AsideWords() {}

    /** Empty for what is none of them. */
    static Optional<HuntInput> read(String typed) {
        String[] words = typed.split("\\s+", 2);
        String rest = words.length > 1 ? words[1].strip() : "";
        return switch (words[0].toLowerCase(Locale.ROOT)) {
            case "where" -> alone(rest, new HuntInput.Where());
            case "close" -> alone(rest, new HuntInput.Close());
            case "stop", "quit", "exit" -> alone(rest, new HuntInput.Leave());
            case "other" -> rest.isEmpty() || number(rest).isPresent() ? Optional.of(new HuntInput.Other(number(rest))) : Optional.empty();
            case "again" -> Optional.of(new HuntInput.Again(rest));
            case "withdraw", "undo" -> Optional.of(withdraw(rest));
            case "correct" -> correct(rest);
            case "note" -> Optional.of(new HuntInput.Note(rest));
            default -> Optional.empty();
        };
    }

    /** A word that says all by itself; with more behind it, it is the beginning of a sentence. */
    private static Optional<HuntInput> alone(String rest, HuntInput input) {
        return rest.isEmpty() ? Optional.of(input) : Optional.empty();
    }

    private static OptionalInt number(String text) {
        return text.matches("\\d{1,6}") ? OptionalInt.of(Integer.parseInt(text)) : OptionalInt.empty();
    }

    private static Optional<HuntInput> correct(String rest) {
        String[] words = rest.split("\\s+", 2);
        return Detail.of(words[0].toLowerCase(Locale.ROOT)).map(detail -> new HuntInput.Correct(detail, words.length > 1 ? words[1] : ""));
    }

    private static HuntInput withdraw(String rest) {
        String[] words = rest.split("\\s+", 2);
        OptionalInt number = number(words[0]);
        return new HuntInput.Withdraw(number, number.isEmpty() ? rest : words.length > 1 ? words[1] : "");
    }
}
