package understudy.hunt;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiFunction;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refused;
import understudy.refusal.Result;
import understudy.trace.Detail;
import understudy.trace.Entry;
import understudy.trace.EventWords;
import understudy.trace.Hunt;
import understudy.trace.NextStep;
import understudy.trace.Numbered;
import understudy.trace.Place;
import understudy.trace.Point;

/** What goes at every question: the standing, another point, taking back, notes, the end. */
final class Asides {

    private static final String WHY_WITHDRAW =
            "What was read stays in the record, with the reason why it does not count; who reads the report wants to know it.";
    private static final List<Answers.Option<HuntInput>> STOP = List.of(new Answers.Option<>(new HuntInput.Leave(), List.of("stop"),
            "leaves; the job is kept, and you can resume it"));

    private Asides() {}

    static HuntSession after(HuntInput.Aside input, Stage stage, Turn turn) {
        if (input instanceof HuntInput.Where) {
            return turn.show(new Remark.Standing()).to(stage);
        } else if (input instanceof HuntInput.Other other) {
            return other(other.number(), stage, turn);
        } else if (input instanceof HuntInput.Again again) {
            return again(again.reason(), stage, turn);
        } else if (input instanceof HuntInput.Withdraw withdraw) {
            return withdraw(withdraw, stage, turn);
        } else if (input instanceof HuntInput.Note note) {
            return note.words().isEmpty() ? turn.to(reason("What is to be kept?",
                    "A note stands in the record, with its time, and changes nothing else.", stage, (words, then) -> note(words, stage, then)))
                    : note(note.words(), stage, turn);
        } else if (input instanceof HuntInput.Correct correct) {
            return correct(correct, stage, turn);
        } else if (input instanceof HuntInput.Close) {
            turn.admit(new Entry.Closed("", Optional.empty()));
            return Ending.close(turn, false);
        }
        return turn.to(new Left());
    }

    private static HuntSession note(String words, Stage stage, Turn turn) {
        return turn.say("Kept as step " + turn.keep(new Entry.Noted(words)) + ".").to(stage);
    }

    private static HuntSession correct(HuntInput.Correct input, Stage stage, Turn turn) {
        Detail detail = input.detail();
        String was = turn.hunt().written(detail);
        turn.admit(new Entry.Corrected(detail, was, input.words()));
        if (input.words().isEmpty()) {
            return turn.to(reason("What should stand for " + detail.key() + "? Now: \"" + was + "\".",
                    "The report shows the new words; what stood there before stays in the list of steps.", stage,
                    (words, then) -> correct(new HuntInput.Correct(detail, words), stage, then)));
        }
        turn.keep(new Entry.Corrected(detail, was, input.words()));
        return turn.say("From now on: " + detail.key() + " \"" + input.words() + "\".").to(stage);
    }

    private static HuntSession again(String reason, Stage stage, Turn turn) {
        int number = last(turn.hunt(), Entry.Injected.class).orElseThrow(Judging::nothingRead);
        if (reason.isEmpty()) {
            return turn.to(reason("Why does step " + number + " not count?", WHY_WITHDRAW, stage,
                    (words, then) -> again(words, stage, then)));
        }
        Place place = ((Entry.Injected) turn.hunt().events().get(number - 1).entry()).place();
        turn.keep(new Entry.Withdrawn(number, reason));
        return turn.instead(place);
    }

    private static HuntSession withdraw(HuntInput.Withdraw input, Stage stage, Turn turn) {
        int number = input.number().orElseGet(() -> last(turn.hunt(), Entry.class)
                .orElseThrow(() -> new Refused("nothing has happened yet", "there is nothing to take back")));
        turn.admit(new Entry.Withdrawn(number, input.reason()));
        if (input.reason().isBlank()) {
            return turn.say("Step " + number + ": " + EventWords.step(turn.hunt(), turn.hunt().events().get(number - 1)))
                    .to(reason("Why does it not count?", WHY_WITHDRAW, stage,
                            (words, then) -> withdraw(new HuntInput.Withdraw(OptionalInt.of(number), words), stage, then)));
        }
        turn.keep(new Entry.Withdrawn(number, input.reason()));
        return turn.say("Step " + number + " no longer counts; it stays in the record.").next();
    }

    /** The number of the latest that counts; a withdrawal is not withdrawn. */
    private static Optional<Integer> last(Hunt hunt, Class<? extends Entry> kind) {
        List<Numbered> events = hunt.standing().stream()
                .filter(event -> kind.isInstance(event.entry()) && !(event.entry() instanceof Entry.Withdrawn)).toList();
        return events.isEmpty() ? Optional.empty() : Optional.of(events.get(events.size() - 1).number());
    }

    private static HuntSession other(OptionalInt number, Stage stage, Turn turn) {
        NextStep next = turn.hunt().next();
        if (next instanceof NextStep.Caution) {
            throw new Refused("nothing can be injected now", "read and tick the cautions first");
        }
        boolean onReference = next instanceof NextStep.Inject inject && inject.purpose() == NextStep.Purpose.METHOD;
        List<Point> points = turn.hunt().circuitOf(new Place(onReference, 0)).points();
        if (number.isPresent()) {
            if (number.getAsInt() < 1 || number.getAsInt() > points.size() || !points.get(number.getAsInt() - 1).injectable()) {
                throw new Refused("\"" + number.getAsInt() + "\" is no point where one can inject", "type other, then one of the numbers");
            }
            return turn.instead(new Place(onReference, number.getAsInt() - 1));
        }
        for (int i = 0; i < points.size(); i++) {
            if (points.get(i).injectable()) {
                turn.show(new Remark.Choice(i + 1, points.get(i).name() + ", " + EventWords.minutes(points.get(i).reachMinutes())));
            }
        }
        return turn.to(new PointChoice(stage));
    }

    /** Another point is chosen by its number. @param back what was asked before */
    record PointChoice(Stage back) implements Stage {

        @Override
        public Optional<Playing> playing() {
            return back.playing();
        }

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            Answers<HuntInput> number = new Answers.Otherwise<>(STOP, typed -> typed.matches("\\d{1,3}")
                    ? Result.of(new HuntInput.Other(OptionalInt.of(Integer.parseInt(typed))))
                    : Result.refused(List.of(new Refusal(Location.NOWHERE, "\"" + typed + "\" is no point where one can inject",
                            "type one of the numbers, or Enter"))),
                    new Answers.Meaning("3", "the point of that number; Enter, to leave it"));
            return new Question<>("Which point? Its number, or Enter for the one proposed:",
                    "The proposal is the quickest; a point that you are at already may be quicker still.", number,
                    Optional.of(new HuntInput.Done()));
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (input instanceof HuntInput.SignalLost) {
                return back.after(input, turn);
            } else if (!(input instanceof HuntInput.Done)) {
                throw Stage.notAsked();
            }
            return turn.to(back);
        }
    }

    /** Asks for words, in which nothing but stop alone is taken for a command, and goes on with them. */
    static Stage reason(String sentence, String why, Stage back, BiFunction<String, Turn, HuntSession> then) {
        return new Reason(sentence, why, back, then);
    }

    private record Reason(String sentence, String why, Stage back, BiFunction<String, Turn, HuntSession> then) implements Stage {

        @Override
        public Optional<Playing> playing() {
            return back.playing();
        }

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            Answers<HuntInput> words = new Answers.As<>(new Answers.Words(true, "they stand in the record"), HuntInput.Words::new);
            return new Question<>(sentence, why, new Answers.Otherwise<>(STOP, words::read, words.meanings().get(0)), Optional.empty());
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (input instanceof HuntInput.SignalLost) {
                return back.after(input, turn);
            }
            if (!(input instanceof HuntInput.Words words)) {
                throw Stage.notAsked();
            }
            return then.apply(words.words(), turn);
        }
    }

    /** The job is closed. */
    record Ended() implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            throw new IllegalStateException("the job is closed, nothing is asked");
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            throw new IllegalStateException("the job is closed");
        }
    }

    /** The user left. */
    record Left() implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            throw new IllegalStateException("the user left, nothing is asked");
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            throw new IllegalStateException("the user left");
        }
    }
}
