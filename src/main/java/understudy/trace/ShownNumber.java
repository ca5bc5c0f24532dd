package understudy.trace;

import java.util.List;
import java.util.Optional;
import understudy.reading.Displayed;
import understudy.reading.Expected;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Result;

/**
 * A number that was typed as what the display shows.
 *
 * @param answer the number, in the display's unit
 * @param note   what was made of what was typed, to be shown; empty when nothing was
 * @param doubt  a question to be answered with yes before it counts; empty when it is likely enough
 */
public record ShownNumber(Answer answer, String note, Optional<String> doubt) {

    /**
     * Reads what was typed and compares it with what is expected, if only to ask whether it was mistyped.
     *
     * @param orElse what else may be typed, for who typed none of it
     */
    public static Result<ShownNumber> read(String typed, Expected expected, String orElse) {
        Displayed displayed = Displayed.parse(typed, expected.unit(), Optional.of(expected));
        if (displayed instanceof Displayed.Value value) {
            return Result.of(new ShownNumber(Answer.value(value.shown()), value.note(), Optional.empty()));
        } else if (displayed instanceof Displayed.Asked asked) {
            String question = Character.toUpperCase(asked.question().charAt(0)) + asked.question().substring(1) + " yes or no:";
            return Result.of(new ShownNumber(Answer.value(asked.shown()), "", Optional.of(question)));
        }
        Displayed.Refused refused = (Displayed.Refused) displayed;
        return Result.refused(List.of(new Refusal(Location.NOWHERE, refused.wrong(), refused.right() + "; or " + orElse)));
    }
}
