package understudy.hunt;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refused;
import understudy.refusal.Result;
import understudy.trace.Entry;
import understudy.trace.EventWords;
import understudy.trace.Hunt;
import understudy.trace.Judgement;
import understudy.trace.Place;
import understudy.trace.Suspect;
import understudy.trace.Verdict;

/** A reading is kept, and what it says is shown. */
final class Judging {

    private static final List<String> METHOD_CHECKS = List.of(
            "the clips: ground on ground, signal on the signal pin, and the sensor unplugged",
            "the rig: is it the right output, is the system's volume at 100 %?",
            "the polarity: try the two wires the other way round",
            "the level: volts ... compares what a meter shows at the clips with what is due",
            "the display: is it the right value, and does this module show it while it stands?",
            "the circuit file: teeth, ratio, unit");

    private Judging() {}

    /** First asks what was moved. */
    static HuntSession moved(Turn turn, Entry.Injected injected) {
        List<Suspect> between = between(turn.hunt(), injected.place());
        IntStream.range(0, between.size()).forEach(i -> turn.show(new Remark.Choice(i + 1, between.get(i).name())));
        return turn.to(new Moved(injected));
    }

    private static List<Suspect> between(Hunt hunt, Place place) {
        List<Suspect> pieces = hunt.circuitOf(place).suspects();
        return pieces.subList(place.point() + 1, pieces.size());
    }

    /** What was moved when the display came and went. */
    record Moved(Entry.Injected injected) implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            List<Suspect> between = between(hunt, injected.place());
            Answers<HuntInput> number = new Answers.Otherwise<>(List.of(), typed -> piece(typed, between),
                    new Answers.Meaning("1 to " + between.size(), "the piece of that number; Enter, if you don't know"));
            return Stage.asking("Which of these was moved just then? Its number, or Enter if you don't know:",
                    "What makes the display come and go when it is moved is likely to be the fault itself.", number,
                    new HuntInput.Moved(Optional.empty()));
        }

        private static Result<HuntInput> piece(String typed, List<Suspect> between) {
            if (typed.matches("\\d{1,3}") && Integer.parseInt(typed) >= 1 && Integer.parseInt(typed) <= between.size()) {
                return Result.of(new HuntInput.Moved(Optional.of(between.get(Integer.parseInt(typed) - 1).index())));
            }
            return Result.refused(List.of(new Refusal(Location.NOWHERE, "\"" + typed + "\" is none of them",
                    "type a number from 1 to " + between.size() + ", or Enter")));
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (!(input instanceof HuntInput.Moved moved)) {
                throw Stage.notAsked();
            }
            return keep(turn, new Entry.Injected(injected.place(), injected.speedHz(), injected.frequencyHz(), injected.levelPart(),
                    injected.expected(), injected.answer(), injected.clipPart(), moved.suspect()));
        }
    }

    static HuntSession keep(Turn turn, Entry.Injected injected) {
        int number = turn.keep(injected);
        Judgement judgement = Judgement.of(injected);
        turn.gap().say("Step " + number + ", " + turn.hunt().name(injected.place()) + ": " + judgement.verdict() + ". "
                + judgement.reason());
        if (injected.levelPart() < 1 && judgement.verdict() == Verdict.BAD) {
            turn.say("That was at a level of " + EventWords.percent(injected.levelPart()) + ". It is a fair test only if the display"
                    + " still reads right at that level nearer to the module; if it does not there either, take this step back (again).");
        }
        return injected.place().onReference() ? method(turn) : suspects(turn, number);
    }

    private static HuntSession suspects(Turn turn, int number) {
        if (turn.hunt().clashes().stream().anyMatch(clash -> clash.goodNumber() == number || clash.badNumber() == number)) {
            turn.gap().show(new Remark.Contradiction(number));
        }
        if (!turn.hunt().repairProven()) {
            turn.gap().say("Suspects now:").show(new Remark.Suspects());
        }
        return turn.next();
    }

    private static HuntSession method(Turn turn) {
        if (turn.hunt().methodProven()) {
            return turn.say("Rig and method are proven. Now the suspect circuit.").next();
        }
        turn.say("Rig and method are not proven, so nothing that reads bad on the suspect circuit would count. Check:");
        METHOD_CHECKS.forEach(check -> turn.show(new Remark.Item(check)));
        return turn.to(new Unproven());
    }

    /** The reference circuit did not read as it should. */
    record Unproven() implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            Answers<HuntInput> goOn = new Answers.Choice<>(List.of(
                    new Answers.Option<>(new HuntInput.Done(), List.of("enter"), "press Enter alone: inject there again"),
                    new Answers.Option<>(new HuntInput.WithoutProof(), List.of("go on"), "do without the proof; you are asked why")));
            return Stage.asking("Press Enter to inject there again, or type go on to do without the proof:",
                    "As long as the signal is not seen on a circuit that works, a bad reading may be the rig's own fault.", goOn,
                    new HuntInput.Done());
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (input instanceof HuntInput.WithoutProof) {
                return turn.to(Asides.reason("Why do you go on without it?",
                        "Without the proof nobody knows whether rig and method work; the report says that you went on, and why.", this,
                        (words, then) -> {
                            then.keep(new Entry.WentOn(words));
                            return then.next();
                        }));
            } else if (input instanceof HuntInput.Done) {
                return turn.next();
            }
            throw Stage.notAsked();
        }
    }

    static Refused nothingRead() {
        return new Refused("nothing was read yet", "there is nothing to take back");
    }
}
