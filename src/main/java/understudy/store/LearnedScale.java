package understudy.store;

import java.time.Instant;
import java.time.ZoneId;
import understudy.reading.DisplayUnit;
import understudy.reading.Estimate;
import understudy.reading.Learned;
import understudy.reading.Reading;
import understudy.reading.Scale;

/**
 * The scale of a display, as it was learned on one vehicle.
 *
 * @param vehicle   in the user's words; not empty
 * @param circuitId of the circuit that was read
 * @param reading   what is expected by it: of a learned kind, a straight line
 * @param perHz     slope with its limits, in the display's unit for each event a second
 * @param offset    shown at 0 Hz with its limits, in the display's unit
 * @param at        when it was learned
 * @param origin    from what, in words: the name of a job, a sweep
 */
public record LearnedScale(
        String vehicle, String circuitId, Reading reading, Estimate perHz, Estimate offset, Instant at, String origin) {

    public LearnedScale {
        if (vehicle.isBlank()) {
            throw new IllegalArgumentException("a learned scale belongs to a vehicle");
        }
        if (reading.kind() != Reading.Kind.LEARNED || !(reading.scale() instanceof Scale.Line)) {
            throw new IllegalArgumentException("what is learned is a straight line, got " + reading.text());
        }
    }

    public static LearnedScale of(String vehicle, String circuitId, Learned learned, Instant at, String origin) {
        Estimate offset = learned.fit().throughZero().isPresent() ? new Estimate(0, 0, 0) : learned.fit().offset();
        return new LearnedScale(vehicle, circuitId, learned.reading(), learned.fit().factor(), offset, at, origin);
    }

    Scale.Line line() {
        return (Scale.Line) reading.scale();
    }

    /** From what it was learned, when, and the scale itself. */
    public String words(ZoneId zone) {
        DisplayUnit unit = reading.unit();
        return "learned on vehicle \"" + vehicle + "\" on " + at.atZone(zone).toLocalDate() + " (" + origin + "), "
                + unit.rounded(perHz.value(), 5) + " for each Hz"
                + (offset.value() == 0 ? "" : ", " + unit.rounded(offset.value(), 3) + " at 0 Hz");
    }
}
