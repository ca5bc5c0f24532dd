package understudy.sweep;

import java.time.Instant;
import java.util.Optional;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.reading.Learned;
import understudy.reading.ScaleFit;
import understudy.refusal.Control;
import understudy.refusal.Remedy;
import understudy.store.LearnedScale;
import understudy.store.Store;

/**
 * The offer to keep the scale that a sweep has learned.
 *
 * @param learned    from what was read
 * @param asDeclared whether it agrees with what was expected
 * @param vehicle    which one, if that is known
 * @param circuitId  of what was swept
 */
public record ScaleOffer(Learned learned, boolean asDeclared, Optional<String> vehicle, String circuitId) {

    private static final String WHY = "A learned scale gives narrower limits than the declared one.";

    public ScaleOffer {
        vehicle = vehicle.map(String::strip).filter(words -> !words.isEmpty());
    }

    /** One of numbers that waver is not worth keeping. */
    public boolean stands() {
        return learned.fit().basis() != ScaleFit.Basis.SCATTER;
    }

    /** What to know first, if anything. */
    public Optional<String> remark() {
        if (!stands()) {
            return Optional.of("A scale of numbers that waver so much is not worth keeping.");
        }
        return asDeclared ? Optional.empty() : Optional.of("Keep this scale only if you know that the module is good: by the scale of a"
                + " bad one, the next bad one would read right.");
    }

    /** For which vehicle it is to be kept; empty for none. */
    public Question<Optional<String>> question() {
        if (vehicle.isPresent()) {
            return new Question<>("Keep this scale for vehicle \"" + vehicle.get() + "\"? yes or no:", WHY, new Answers.As<>(
                    new Answers.YesNo("the next hunt or sweep on it can expect readings by this scale", "nothing is kept"),
                    yes -> vehicle.filter(whichever -> yes)), Optional.empty());
        }
        return new Question<>("Keep this scale? Type which vehicle it is, or Enter for no:", WHY, new Answers.As<>(
                new Answers.Words(false, "which vehicle it is"), words -> Optional.of(words).filter(typed -> !typed.equalsIgnoreCase("no"))),
                Optional.of(Optional.empty()));
    }

    /**
     * Keeps it; gives how to use it the next time.
     *
     * @param origin from what it was learned, in words
     */
    public Remedy keep(Store store, String owner, Instant at, String origin) {
        store.learnedScales().keep(LearnedScale.of(owner, circuitId, learned, at, origin));
        Remedy next = Remedy.of("Kept. Next time add ").set(Control.LEARNED);
        return (vehicle.isPresent() ? next : next.then(" ").set(Control.VEHICLE, owner)).then(".");
    }
}
