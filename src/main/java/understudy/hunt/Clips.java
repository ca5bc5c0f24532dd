package understudy.hunt;

import java.util.Optional;
import understudy.trace.Place;

/**
 * Where the rig's clips are, as far as a session knows.
 *
 * @param at        the place they are on; empty: nowhere, or not known
 * @param known     whether this session had them on or off once
 * @param unplugged the circuit whose sensor the user was asked to unplug: true is the reference circuit
 */
record Clips(Optional<Place> at, boolean known, Optional<Boolean> unplugged) {

    static final Clips UNKNOWN = new Clips(Optional.empty(), false, Optional.empty());

    boolean on(Place place) {
        return at.filter(place::equals).isPresent();
    }

    Clips onAt(Place place) {
        return new Clips(Optional.of(place), true, unplugged);
    }

    /** Off, and the sensor of that circuit unplugged. */
    Clips off(boolean onReference) {
        return new Clips(Optional.empty(), known, Optional.of(onReference));
    }
}
