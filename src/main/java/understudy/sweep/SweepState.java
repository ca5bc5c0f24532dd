package understudy.sweep;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.reading.Expected;
import understudy.refusal.Refused;
import understudy.refusal.Result;
import understudy.trace.Answer;
import understudy.trace.ShownNumber;

/**
 * How a sweep stands: what was read, what is asked now. Immutable; whatever a person says makes the next state.
 *
 * @param stops   in the order in which they come
 * @param rows    what was read, one for each stop that is done
 * @param doubt   a number that is asked for once more, if one is
 * @param stopped whether the person ended it before the last stop
 */
public record SweepState(SweptCircuit circuit, List<SweepStop> stops, List<SweepRow> rows, Optional<SweepInput.Doubtful> doubt,
        boolean stopped) {

    private static final List<Answers.Option<SweepInput>> WORDS = List.of(
            new Answers.Option<>(shown(Answer.Kind.NOTHING), List.of("nothing", "none", "blank", "dead"), "it shows nothing"),
            new Answers.Option<>(shown(Answer.Kind.ERRATIC), List.of("erratic", "jumps"), "it jumps about"),
            new Answers.Option<>(new SweepInput.Back(), List.of("back"), "the last speed once more; what was typed there is forgotten"),
            new Answers.Option<>(new SweepInput.Stop(), List.of("stop", "quit", "exit"), "ends the sweep here"));

    public SweepState {
        stops = List.copyOf(stops);
        rows = List.copyOf(rows);
        if (rows.size() > stops.size()) {
            throw new IllegalArgumentException(rows.size() + " rows of " + stops.size() + " stops");
        }
    }

    /** @param rows read before, if it goes on where it stood */
    public static SweepState of(SweptCircuit circuit, List<SweepStop> stops, List<SweepRow> rows) {
        return new SweepState(circuit, stops, rows, Optional.empty(), false);
    }

    private static SweepInput shown(Answer.Kind kind) {
        return new SweepInput.Shown(Answer.of(kind), "");
    }

    /** Whether nothing more is asked. */
    public boolean isOver() {
        return stopped || rows.size() == stops.size();
    }

    /** Where the display is read next; not when it is over. */
    public SweepStop next() {
        return stops.get(rows.size());
    }

    /** What the display should show there. */
    public Expected expected() {
        return circuit.expected(next().speedHz()).orElseThrow();
    }

    /** What is asked now; not when it is over. */
    public Question<SweepInput> question() {
        return doubt.map(SweepState::sure).orElseGet(this::displayed);
    }

    private static Question<SweepInput> sure(SweepInput.Doubtful doubt) {
        return new Question<>(doubt.question(),
                "The number is far from what is due here: a digit or the point may have slipped.",
                new Answers.Choice<>(List.of(
                        new Answers.Option<>(new SweepInput.Sure(true), List.of("yes", "y"), "it stands as it was typed"),
                        new Answers.Option<>(new SweepInput.Sure(false), List.of("no", "n"), "it is asked for again"))),
                Optional.empty());
    }

    private Question<SweepInput> displayed() {
        Expected expected = expected();
        String unit = expected.unit().symbol();
        return new Question<SweepInput>("Displayed, in " + unit + ":",
                "What the display shows when it stands still, compared with what is due: " + expected + ".",
                new Answers.Otherwise<>(WORDS, typed -> number(typed, expected),
                        new Answers.Meaning("a number in " + unit + ", or with its unit", "what the display shows")),
                Optional.of(new SweepInput.Skip()));
    }

    private static Result<SweepInput> number(String typed, Expected expected) {
        Result<ShownNumber> read = ShownNumber.read(typed, expected, "nothing, erratic, back, stop");
        return Result.of(read.value().map(number -> number.doubt().isPresent()
                ? new SweepInput.Doubtful(number.answer(), number.doubt().get())
                : new SweepInput.Shown(number.answer(), number.note())), read.problems());
    }

    /**
     * The state after this was said.
     *
     * @param at when
     * @throws Refused for what does not go now: back at the first speed, an answer when it is over
     */
    public SweepState after(SweepInput input, Instant at) {
        boolean asked = input instanceof SweepInput.Stop || doubt.isPresent() == input instanceof SweepInput.Sure;
        if (isOver() || !asked) {
            throw new Refused("this is not what is asked now", isOver() ? "the sweep is over" : "answer: " + question().sentence());
        }
        if (input instanceof SweepInput.Shown shown) {
            return read(Optional.of(shown.answer()), at);
        } else if (input instanceof SweepInput.Skip) {
            return read(Optional.empty(), at);
        } else if (input instanceof SweepInput.Doubtful doubtful) {
            return new SweepState(circuit, stops, rows, Optional.of(doubtful), false);
        } else if (input instanceof SweepInput.Sure sure) {
            return sure.yes() ? read(doubt.map(SweepInput.Doubtful::answer), at) : of(circuit, stops, rows);
        } else if (input instanceof SweepInput.Back) {
            if (rows.isEmpty()) {
                throw new Refused("this is the first speed", "there is none before it");
            }
            return of(circuit, stops, rows.subList(0, rows.size() - 1));
        }
        return new SweepState(circuit, stops, rows, Optional.empty(), true);
    }

    private SweepState read(Optional<Answer> seen, Instant at) {
        List<SweepRow> more = new ArrayList<>(rows);
        more.add(new SweepRow(at, next().speedHz(), circuit.frequencyHz(next().speedHz()), expected(), seen));
        return of(circuit, stops, more);
    }

    /** What is to be said of the last row. */
    public String verdict() {
        SweepRow row = rows.get(rows.size() - 1);
        return row.right() ? "Right." : (row.tells() ? "Not right: " : "This shows nothing: ") + row.reason() + ".";
    }
}
