package understudy.hunt;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refused;
import understudy.refusal.Result;
import understudy.trace.Answer;
import understudy.trace.Entry;
import understudy.trace.EventWords;
import understudy.trace.Hunt;
import understudy.trace.Place;
import understudy.trace.ShownNumber;

/**
 * It plays, and the display is read.
 *
 * @param levelPart of its level
 * @param clipPart  volts at the clips as a part of what they should be, if they were measured
 * @param doubt     a number that is asked for once more, if one is
 */
record Reading(Place place, double levelPart, Optional<Double> clipPart, Optional<HuntInput.Doubtful> doubt) implements Stage {

    private static final Range LEVEL = new Range(1, 100, Unit.PERCENT);
    private static final Range ALTERNATING = new Range(0, 100, Unit.VOLT);
    private static final List<Answers.Option<HuntInput>> WORDS = List.of(
            word(Answer.Kind.NOTHING, "it shows nothing", "nothing", "none", "blank", "dead"),
            word(Answer.Kind.ERRATIC, "it jumps about", "erratic", "jumps"),
            word(Answer.Kind.COMES_AND_GOES, "it comes and goes when something is moved", "moves", "comes and goes",
                    "comes and goes when moved"));
    private static final List<Answers.Meaning> CONTROLS = List.of(
            new Answers.Meaning("level 30 %", "plays lower: shows corroded contacts, which pass the full signal"),
            new Answers.Meaning("volts 0.4 V", "what a meter for alternating volts shows at the clips just now"));

    static Reading of(Place place) {
        return new Reading(place, 1, Optional.empty(), Optional.empty());
    }

    private static Answers.Option<HuntInput> word(Answer.Kind kind, String meaning, String... names) {
        return new Answers.Option<>(new HuntInput.Shown(Answer.of(kind), ""), List.of(names), meaning);
    }

    @Override
    public Optional<Playing> playing() {
        return Optional.of(new Playing(place, levelPart));
    }

    @Override
    public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
        return doubt.map(Reading::sure).orElseGet(() -> displayed(equipment.signal(place)));
    }

    private static Question<HuntInput> sure(HuntInput.Doubtful doubt) {
        return Stage.asking(doubt.question(), "The number is far from what is due here: a digit or the point may have slipped.",
                Stage.yesNo("it stands as it was typed", "it is asked for again"));
    }

    private static Question<HuntInput> displayed(HuntSignal signal) {
        String unit = signal.expected().unit().symbol();
        Answers<HuntInput> shown = new Answers.Otherwise<>(WORDS, typed -> number(typed, signal),
                new Answers.Meaning("47 or 29 mph", "the number that it shows, in " + unit + " or with its unit"));
        return Stage.asking("What does the display show, in " + unit + "?",
                "While it plays, type what the display shows; that stops it. Expected: " + signal.expected() + ".",
                new Answers.Beside<>(shown, typed -> Optional.empty(), CONTROLS));
    }

    private static Result<HuntInput> number(String typed, HuntSignal signal) {
        String plain = typed.toLowerCase(Locale.ROOT);
        if (plain.startsWith("level")) {
            return quantity(typed.substring(5), LEVEL, percent -> new HuntInput.Level(percent / 100));
        } else if (plain.startsWith("volts")) {
            return quantity(typed.substring(5), ALTERNATING, HuntInput.ClipVolts::new);
        } else if (typed.isEmpty()) {
            return Result.refused(List.of(new Refusal(Location.NOWHERE, "type what the display shows", "nothing, if it shows nothing")));
        }
        Result<ShownNumber> read = ShownNumber.read(typed, signal.expected(), "nothing, erratic, moves. Type ? for what else goes");
        return Result.of(read.value().map(number -> number.doubt().isPresent()
                ? new HuntInput.Doubtful(number.answer(), number.doubt().get())
                : new HuntInput.Shown(number.answer(), number.note())), read.problems());
    }

    private static Result<HuntInput> quantity(String typed, Range range, java.util.function.DoubleFunction<HuntInput> made) {
        Result<Double> read = new Answers.Number(range, "").read(typed.strip());
        return Result.of(read.value().map(made::apply), read.problems());
    }

    @Override
    public HuntSession after(HuntInput input, Turn turn) {
        if (input instanceof HuntInput.SignalLost lost) {
            return turn.say("This reading does not count: " + lost.reason() + ".").to(new Injecting.Clipped(place, true));
        } else if (doubt.isPresent()) {
            if (!(input instanceof HuntInput.Agreed agreed)) {
                throw Stage.notAsked();
            }
            return agreed.yes() ? seen(doubt.get().answer(), turn) : turn.to(new Reading(place, levelPart, clipPart, Optional.empty()));
        } else if (input instanceof HuntInput.Shown shown) {
            if (!shown.note().isEmpty()) {
                turn.say(shown.note() + ".");
            }
            return seen(shown.answer(), turn);
        } else if (input instanceof HuntInput.Doubtful doubtful) {
            return turn.to(new Reading(place, levelPart, clipPart, Optional.of(doubtful)));
        } else if (input instanceof HuntInput.Level level) {
            return level(level.part(), turn);
        } else if (input instanceof HuntInput.ClipVolts clips) {
            double due = turn.equipment().signal(place).clipVolts() * levelPart;
            double part = clips.volts() / due;
            return turn.say("That is " + Math.round(100 * part) + " % of the " + EventWords.volts(due)
                    + " that should be there (a meter shows it right up to some hundred Hz).")
                    .to(new Reading(place, levelPart, Optional.of(part), Optional.empty()));
        }
        throw Stage.notAsked();
    }

    private HuntSession level(double part, Turn turn) {
        if (!(part > 0 && part <= 1)) {
            throw new Refused("a level of " + 100 * part + " % can't be", LEVEL.allowed());
        }
        return turn.say("It plays at " + EventWords.percent(part) + " of its level now. What the display should show is the same.")
                .to(new Reading(place, part, clipPart, Optional.empty()));
    }

    private HuntSession seen(Answer answer, Turn turn) {
        HuntSignal signal = turn.equipment().signal(place);
        Entry.Injected injected = new Entry.Injected(place, signal.speedHz(), signal.frequencyHz(), levelPart, signal.expected(), answer,
                clipPart, Optional.empty());
        return answer.kind() == Answer.Kind.COMES_AND_GOES ? Judging.moved(turn, injected) : Judging.keep(turn, injected);
    }
}
