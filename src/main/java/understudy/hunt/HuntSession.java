package understudy.hunt;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import understudy.pattern.Hazard;
import understudy.question.Question;
import understudy.refusal.Refused;
import understudy.trace.Hunt;
import understudy.trace.NextStep;
import understudy.trace.Place;

/**
 * A hunt as it is led: what is asked now, what is to be shown before, whether a signal plays meanwhile. Immutable; whatever a
 * person says makes the next one. Whoever leads it keeps what the next one's {@link #hunt} has more before anything else is
 * asked, plays while {@link #playing} says so, shows the {@link #remarks}, and asks the {@link #question}.
 */
public final class HuntSession {

    private final Hunt hunt;
    private final HuntEquipment equipment;
    private final Clips clips;
    private final Set<Hazard> ticked;
    private final Stage stage;
    private final List<Remark> remarks;

    HuntSession(Hunt hunt, HuntEquipment equipment, Clips clips, Set<Hazard> ticked, Stage stage, List<Remark> remarks) {
        this.hunt = hunt;
        this.equipment = equipment;
        this.clips = clips;
        this.ticked = Set.copyOf(ticked);
        this.stage = stage;
        this.remarks = List.copyOf(remarks);
    }

    /** From where the hunt stands. */
    public static HuntSession of(Hunt hunt, HuntEquipment equipment) {
        return new Turn(hunt, equipment, Clips.UNKNOWN, Set.of(), Instant.EPOCH).next();
    }

    /** The hunt as it stands, with all that was said. */
    public Hunt hunt() {
        return hunt;
    }

    /** Whether nothing more is asked: the job is closed, or the user left. */
    public boolean isOver() {
        return left() || hunt.next() instanceof NextStep.Ended;
    }

    /** Whether the user left before the job was closed. */
    public boolean left() {
        return stage instanceof Asides.Left;
    }

    /** To be shown before the question. */
    public List<Remark> remarks() {
        return remarks;
    }

    /** What is asked now; not when it is over. */
    public Question<HuntInput> question() {
        return stage.question(hunt, equipment);
    }

    /** Where the signal plays now; empty when none does. */
    public Optional<Place> playing() {
        return stage.playing().map(Stage.Playing::place);
    }

    /** The part of its level at which it plays. */
    public double levelPart() {
        return stage.playing().map(Stage.Playing::levelPart).orElse(1.0);
    }

    /**
     * The session after this was said.
     *
     * @param at when
     * @throws Refused for what does not go now; nothing has changed then
     */
    public HuntSession after(HuntInput input, Instant at) {
        if (isOver()) {
            throw new Refused("the hunt is over", "resume it, or begin another");
        }
        Turn turn = new Turn(hunt, equipment, clips, ticked, at);
        return input instanceof HuntInput.Aside aside ? Asides.after(aside, stage, turn) : stage.after(input, turn);
    }
}
