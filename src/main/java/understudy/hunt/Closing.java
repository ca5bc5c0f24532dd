package understudy.hunt;

import java.util.List;
import java.util.Optional;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.trace.Entry;
import understudy.trace.Hunt;
import understudy.trace.Unproven;

/** The last questions of a job. */
final class Closing {

    private Closing() {}

    /** Whether the vehicle's own sensor makes the display read again. */
    record OwnSensor() implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            Answers<HuntInput> works = new Answers.Choice<>(List.of(
                    new Answers.Option<>(new HuntInput.Agreed(true), List.of("yes", "y"), "it does"),
                    new Answers.Option<>(new HuntInput.Agreed(false), List.of("no", "n"), "it does not"),
                    new Answers.Option<>(new HuntInput.Later(), List.of("not tried", "not"), "the report says that it was not tried")));
            return Stage.asking("Does the display work with the vehicle's own sensor? yes, no, or not tried:",
                    "An injection with the sensor unplugged says nothing of the sensor itself.", works, new HuntInput.Later());
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (input instanceof HuntInput.Agreed agreed) {
                return turn.to(agreed.yes() ? new LastWords(Optional.of(true)) : new NotGone());
            } else if (input instanceof HuntInput.Later) {
                return turn.to(new LastWords(Optional.empty()));
            }
            throw Stage.notAsked();
        }
    }

    /** It does not work with its own sensor. */
    record NotGone() implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            return Stage.asking("Then the fault is not gone, or there is a second one. Close all the same? yes or no:",
                    "A job that is closed takes no more readings.",
                    Stage.yesNo("it is closed, and the report says that it does not work", "you can inject again, or withdraw the repair"));
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (!(input instanceof HuntInput.Agreed agreed)) {
                throw Stage.notAsked();
            }
            return turn.to(agreed.yes() ? new LastWords(Optional.of(false)) : new Reopened());
        }
    }

    /** It is not closed after all; only words that go everywhere lead on. */
    record Reopened() implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            return Stage.enter("Type other to inject again, withdraw ... for the repair that did not help, or stop:",
                    "Enter goes on as the hunt stands.");
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (!(input instanceof HuntInput.Done)) {
                throw Stage.notAsked();
            }
            return turn.next();
        }
    }

    /** Whatever else should stand in the record. */
    record LastWords(Optional<Boolean> ownSensorWorks) implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            return Stage.asking("Anything to add for the record? Enter for nothing:", "It stands at the end of the report.",
                    new Answers.As<>(new Answers.Words(false, "stands at the end of the report"), HuntInput.Words::new));
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (!(input instanceof HuntInput.Words words)) {
                throw Stage.notAsked();
            }
            turn.keep(new Entry.Closed(words.words(), ownSensorWorks));
            turn.gap().say("Closed. What was not proven:");
            Unproven.of(turn.hunt()).forEach(sentence -> turn.show(new Remark.Item(sentence)));
            return turn.next();
        }
    }
}
