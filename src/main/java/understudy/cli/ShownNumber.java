package understudy.cli;

import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import understudy.question.Question;
import understudy.reading.Displayed;
import understudy.reading.Expected;
import understudy.trace.Answer;

/** A number that somebody typed as what the display shows, asked about where it is hard to believe. */
final class ShownNumber {

    private ShownNumber() {}

    /**
     * Empty, and said why, when it is not to be taken.
     *
     * @param orElse what else may be typed, for who typed none of it
     * @param ask    puts a question; empty when nobody is to answer any more
     */
    static Optional<Answer> read(String line, Expected expected, String orElse, Consumer<String> say,
            Function<String, Optional<String>> ask) {
        Displayed displayed = Displayed.parse(line, expected.unit(), Optional.of(expected));
        if (displayed instanceof Displayed.Value value) {
            if (!value.note().isEmpty()) {
                say.accept(value.note() + ".");
            }
            return Optional.of(Answer.value(value.shown()));
        } else if (displayed instanceof Displayed.Asked asked) {
            return sure(asked.question(), say, ask) ? Optional.of(Answer.value(asked.shown())) : Optional.empty();
        }
        Displayed.Refused refused = (Displayed.Refused) displayed;
        say.accept(refused.wrong() + "; " + refused.right() + "; or " + orElse + ". Type ? for what else goes.");
        return Optional.empty();
    }

    private static boolean sure(String question, Consumer<String> say, Function<String, Optional<String>> ask) {
        return new Dialogue(ask, say).ask(Question.yesNo(Dialogue.capital(question) + " yes or no:",
                "The number is far from what is due here, so a digit or the point may have slipped.",
                "it stands as typed", "it is typed again")).orElse(false);
    }
}
