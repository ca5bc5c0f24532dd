package understudy.store;

import java.time.ZoneId;
import java.util.Optional;
import java.util.function.Consumer;
import understudy.reading.Reading;
import understudy.refusal.Control;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;

/**
 * The scale of a circuit's display as it was learned on one vehicle.
 *
 * @param vehicle   which one, in the user's words, if that is known
 * @param circuitId of the circuit, or the pattern, that is read
 * @param newest    what was learned last, if anything
 */
public record KeptScale(Optional<String> vehicle, String circuitId, Optional<LearnedScale> newest) {

    public KeptScale {
        vehicle = vehicle.map(String::strip).filter(words -> !words.isEmpty());
    }

    /** As the store has it. */
    public static KeptScale find(Optional<String> vehicle, String circuitId, Store store) {
        return new KeptScale(vehicle, circuitId, vehicle.flatMap(known ->
                store.learnedScales().forVehicle(known.strip(), circuitId).stream().findFirst()));
    }

    /**
     * What is to be expected by the learned scale; empty where it was not asked for, and then the user hears of it.
     *
     * @param asked whether the user wants readings expected by it
     * @param zone  in which days are counted
     */
    public Optional<Reading> choose(boolean asked, ZoneId zone, Consumer<Remedy> say, Refusals problems) {
        if (asked && vehicle.isEmpty()) {
            problems.add(Control.LEARNED, "it is not known which vehicle it is",
                    Remedy.of("add ").set(Control.VEHICLE).then(", with the same words as when it was learned"));
        } else if (asked && newest.isEmpty()) {
            problems.add(Control.LEARNED, "nothing was learned yet of circuit " + circuitId + " on vehicle \"" + vehicle.get() + "\"",
                    Remedy.of("leave ").set(Control.LEARNED).then(" out, and keep the scale when a sweep offers it"));
        }
        newest.ifPresent(scale -> say.accept(asked
                ? Remedy.of("Expected by what was " + scale.words(zone) + ".")
                : Remedy.of("For this vehicle a scale is kept: " + scale.words(zone) + ". Add ").set(Control.LEARNED)
                        .then(" to have the readings expected by it.")));
        return newest.filter(scale -> asked).map(LearnedScale::reading);
    }
}
