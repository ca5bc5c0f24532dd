package understudy.cli.hunt;

import java.util.Optional;
import java.util.function.Consumer;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.Surroundings;
import understudy.question.Answers;
import understudy.question.Question;
import understudy.reading.Learned;
import understudy.reading.Reading;
import understudy.reading.ScaleFit;
import understudy.store.LearnedScale;
import understudy.store.Store;

/** The scale of a circuit's display as it was learned on one vehicle: told of, used where that is asked for, kept. */
final class KeptScale {

    private static final String WHY = "A learned scale gives narrower limits than the declared one.";

    private final Surroundings surroundings;
    private final Optional<String> vehicle;
    private final String circuitId;

    /** @param vehicle which one, in the user's words, if that is known */
    KeptScale(Surroundings surroundings, Optional<String> vehicle, String circuitId) {
        this.surroundings = surroundings;
        this.vehicle = vehicle.map(String::strip).filter(words -> !words.isEmpty());
        this.circuitId = circuitId;
    }

    /** What was learned last. */
    private Optional<LearnedScale> newest() {
        if (vehicle.isEmpty() || !surroundings.keepsAnything()) {
            return Optional.empty();
        }
        try (Store store = surroundings.store()) {
            return store.learnedScales().forVehicle(vehicle.get(), circuitId).stream().findFirst();
        }
    }

    /**
     * What is to be expected by the learned scale; empty where it was not asked for, and then the user hears of it.
     *
     * @param asked whether the user said --learned
     */
    Optional<Reading> choose(boolean asked, Consumer<String> say, Arguments given) {
        Optional<LearnedScale> known = newest();
        if (asked && vehicle.isEmpty()) {
            given.problem("--learned", "it is not known which vehicle it is", "add --vehicle, with the same words as when it was learned");
        } else if (asked && known.isEmpty()) {
            given.problem("--learned", "nothing was learned yet of circuit " + circuitId + " on vehicle \"" + vehicle.get() + "\"",
                    "leave --learned out, and keep the scale when a sweep offers it");
        }
        known.ifPresent(scale -> say.accept(asked
                ? "Expected by what was " + scale.words(surroundings.clock().getZone()) + "."
                : "For this vehicle a scale is kept: " + scale.words(surroundings.clock().getZone()) + ". Add --learned to have the readings expected by it."));
        return known.filter(scale -> asked).map(LearnedScale::reading);
    }

    /**
     * Asks whether a scale is to be kept, and keeps it after a yes. One of numbers that waver is not worth it.
     *
     * @param asDeclared whether it agrees with what was expected
     * @param origin     from what it was learned, in words
     */
    void offer(Learned learned, boolean asDeclared, String origin, TraceTalk talk) {
        if (learned.fit().basis() == ScaleFit.Basis.SCATTER) {
            talk.say("A scale of numbers that waver so much is not worth keeping.");
            return;
        }
        if (!asDeclared) {
            talk.say("Keep this scale only if you know that the module is good: by the scale of a bad one, the next bad one"
                    + " would read right.");
        }
        Optional<String> owner = vehicle.isPresent() ? vehicle.filter(words -> yes(words, talk)) : named(talk);
        if (owner.isEmpty()) {
            talk.say("Not kept.");
            return;
        }
        try (Store store = surroundings.store()) {
            store.learnedScales().keep(LearnedScale.of(owner.get(), circuitId, learned, surroundings.clock().instant(), origin));
        }
        talk.say("Kept. Next time add --learned" + (vehicle.isPresent() ? "" : " --vehicle \"" + owner.get() + "\"") + ".");
    }

    private static boolean yes(String vehicle, TraceTalk talk) {
        return talk.ask(Question.yesNo("Keep this scale for vehicle \"" + vehicle + "\"? yes or no:", WHY,
                "the next hunt or sweep on it can expect readings by this scale", "nothing is kept"), () -> false).orElseThrow();
    }

    private static Optional<String> named(TraceTalk talk) {
        return Optional.of(talk.askOrLeave(new Question<>("Keep this scale? Type which vehicle it is, or Enter for no:", WHY,
                new Answers.Words(false, "which vehicle it is"), Optional.of(""))))
                .filter(words -> !words.isEmpty() && !words.equalsIgnoreCase("no"));
    }
}
