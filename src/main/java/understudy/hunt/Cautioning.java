package understudy.hunt;

import java.util.List;
import java.util.Optional;
import understudy.pattern.Hazard;
import understudy.question.Question;
import understudy.trace.Hunt;
import understudy.trace.Place;

/**
 * The cautions are read and ticked, one by one.
 *
 * @param index of the one that is asked
 * @param then  where it plays once all are ticked; empty: what comes next follows from the hunt
 */
record Cautioning(List<Hazard> hazards, int index, Optional<Place> then) implements Stage {

    static HuntSession begin(Turn turn, List<Hazard> hazards) {
        return begin(turn, hazards, Optional.empty());
    }

    static HuntSession begin(Turn turn, List<Hazard> hazards, Place then) {
        return begin(turn, hazards, Optional.of(then));
    }

    private static HuntSession begin(Turn turn, List<Hazard> hazards, Optional<Place> then) {
        turn.gap().say("Read these cautions, one by one. Nothing is injected before each is ticked.");
        turn.show(new Remark.OwnCautions()).show(new Remark.Caution(hazards.get(0)));
        return turn.to(new Cautioning(hazards, 0, then));
    }

    @Override
    public Question<HuntInput> question(Hunt hunt, HuntEquipment equipment) {
        return Stage.asking("Caution " + (index + 1) + " of " + hazards.size() + ": will you work by it? Type yes:",
                "Each of these has hurt people or modules. The record says that you read them.",
                Stage.yesNo("you read it, and will work by it", "nothing can be injected"));
    }

    @Override
    public HuntSession after(HuntInput input, Turn turn) {
        if (!(input instanceof HuntInput.Agreed agreed)) {
            throw Stage.notAsked();
        } else if (!agreed.yes()) {
            return turn.say("Without that nothing can be injected. See to it first; or type stop, and resume later.").to(this);
        } else if (index + 1 < hazards.size()) {
            return turn.show(new Remark.Caution(hazards.get(index + 1))).to(new Cautioning(hazards, index + 1, then));
        }
        turn.ticked(hazards);
        return then.isPresent() ? turn.play(then.get()) : turn.next();
    }
}
