package understudy.hunt;

import java.util.Optional;
import understudy.rig.Input;
import understudy.trace.Circuit;
import understudy.trace.Place;
import understudy.trace.PinLimits;

/**
 * What a hunt is led with.
 *
 * @param suspect   the signal of the suspect circuit
 * @param reference likewise of the reference circuit, if there is one
 * @param input     the module's, if it is known
 * @param resumed   whether the job was begun in an earlier session, from which the clips may still be on
 */
public record HuntEquipment(HuntSignal suspect, Optional<HuntSignal> reference, Optional<Input> input, boolean resumed) {

    HuntSignal signal(Place place) {
        return place.onReference() ? reference.orElseThrow() : suspect;
    }

    PinLimits pins(Circuit circuit) {
        return PinLimits.of(circuit, input);
    }
}
