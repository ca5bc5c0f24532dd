package understudy.hunt;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.refusal.Result;
import understudy.trace.Certainty;
import understudy.trace.Conclusion;
import understudy.trace.Entry;
import understudy.trace.Finding;
import understudy.trace.Hunt;
import understudy.trace.NextStep;
import understudy.trace.Proof;
import understudy.trace.Suspect;

/** The end of a hunt: what must be proven of a module, and the repair. */
final class Ending {

    private static final Answers.Meaning ENTER = new Answers.Meaning("Enter", "come back to it later");

    private Ending() {}

    static HuntSession prove(Turn turn, NextStep.Prove prove) {
        turn.gap().say("The readings point at the module, with " + Certainty.of(prove.probability()) + ". It is not convicted yet:"
                + " each of these alone makes a sound module look dead. Type how you found it (like: 13.8 V under load); no, if it"
                + " is not so; Enter, to come back to it.");
        return proving(turn, prove.outstanding());
    }

    private static HuntSession proving(Turn turn, List<Proof> left) {
        if (!left.isEmpty()) {
            return turn.gap().say(left.get(0).demand()).to(new Proving(left));
        }
        return turn.hunt().next() instanceof NextStep.Prove still ? turn.gap().to(new Outstanding(still.outstanding())) : turn.next();
    }

    /**
     * One thing after the other that must be proven; what is not comes again.
     *
     * @param left the first of them is asked
     */
    record Proving(List<Proof> left) implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            Answers<HuntInput> found = new Answers.Otherwise<>(List.of(), Proving::found,
                    new Answers.Meaning("13.8 V under load", "how you found it; it then stands proven"));
            return Stage.asking(left.get(0).key() + ":", left.get(0).demand(), new Answers.Beside<>(found, typed -> Optional.empty(),
                    List.of(new Answers.Meaning("no, 0.4 V", "it is not so; what you type is kept as a note"), ENTER)),
                    new HuntInput.Later());
        }

        private static Result<HuntInput> found(String typed) {
            return Result.of(typed.toLowerCase(Locale.ROOT).matches("no?\\b.*|bad\\b.*") ? new HuntInput.NotSo(typed)
                    : new HuntInput.Words(typed));
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            Proof proof = left.get(0);
            if (input instanceof HuntInput.NotSo notSo) {
                turn.keep(new Entry.Noted(proof.key() + " not as it should be: " + notSo.words()));
                turn.say("Then the module may be sound. Mend that first, and inject again at the module's pin (type other).");
            } else if (input instanceof HuntInput.Words how) {
                turn.keep(new Entry.Proven(proof, how.words()));
            } else if (!(input instanceof HuntInput.Later)) {
                throw Stage.notAsked();
            }
            return proving(turn, left.subList(1, left.size()));
        }
    }

    /** All was gone through, and some is not proven. */
    record Outstanding(List<Proof> proofs) implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            return Stage.enter("Still to be proven: " + String.join(", ", proofs.stream().map(Proof::key).toList())
                    + ". Press Enter to go through them; or other, note ..., stop:",
                    "A module is replaced only after what else makes a sound one look dead was ruled out.");
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (!(input instanceof HuntInput.Done)) {
                throw Stage.notAsked();
            }
            return turn.next();
        }
    }

    static HuntSession repair(Turn turn) {
        Hunt hunt = turn.hunt();
        Finding finding = hunt.finding();
        turn.gap().say((finding.decided() ? "FOUND: " : "NOT DECIDED: ") + Conclusion.of(hunt).result());
        if (finding.decided() && finding.suspects().size() > 1) {
            turn.say("Nobody can inject between them: look at them, or move them.");
        }
        turn.say("The evidence:").show(new Remark.Evidence());
        if (finding.is(Suspect.Side.SENSOR)) {
            turn.say("One more injection makes that firmer: at " + firstPoint(hunt) + " (type other), with the level lowered (level 30 %)"
                    + " and everything moved: a corroded contact that passes the full signal shows then.");
        } else {
            turn.say("Take the clips off, the signal clip first, before you repair.");
        }
        return turn.to(new Repairing());
    }

    private static String firstPoint(Hunt hunt) {
        return hunt.circuit().points().get(hunt.circuit().firstInjectable()).name();
    }

    /** Something stands convicted; what was repaired is asked. */
    record Repairing() implements Stage {

        @Override
        public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
            return Stage.asking("What did you repair? (stop, to do it and resume later):",
                    "The repair stands in the record, and is then proven by one more injection.",
                    new Answers.As<>(new Answers.Words(true, "what was repaired, like: new pins, both"), HuntInput.Words::new));
        }

        @Override
        public HuntSession after(HuntInput input, Turn turn) {
            if (!(input instanceof HuntInput.Words repaired)) {
                throw Stage.notAsked();
            }
            turn.keep(new Entry.Repaired(repaired.words()));
            return turn.next();
        }
    }

    /** @param proven the repair holds; otherwise the job is closed as it stands */
    static HuntSession close(Turn turn, boolean proven) {
        turn.gap().say(proven ? "The display came back: the way from " + firstPoint(turn.hunt())
                + " to the module is sound. Take the clips off, the signal clip first, and plug the sensor in again."
                : "The job is closed as it stands. Take the clips off, the signal clip first.");
        return turn.to(new Closing.OwnSensor());
    }
}
