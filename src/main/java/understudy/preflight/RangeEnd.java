package understudy.preflight;

import understudy.refusal.Remedy;
import java.util.List;
import java.util.Optional;

/**
 * One end of a usable range.
 *
 * @param speedHz   furthest speed at which the input decodes, within 1 %; turns per second
 * @param limit     what ends it, if that was looked for
 * @param widenings what would move it, the best first
 */
public record RangeEnd(double speedHz, Optional<Limit> limit, List<Widening> widenings) {

    public RangeEnd {
        widenings = List.copyOf(widenings);
    }

    /**
     * Something that would widen the range, found by trying it.
     *
     * @param remedy  what to do
     * @param speedHz how far the range would then go, turns per second
     */
    public record Widening(Remedy remedy, double speedHz) {}
}
