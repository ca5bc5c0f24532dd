package understudy.pattern;

import java.util.List;

/**
 * Teeth and gaps over one turn or one cycle, with every angle resolved. From 0 to below {@code overDeg} lie the leading
 * edges of teeth that a Hall sensor reads, or the centres of those that a reluctor reads; so a reluctor's first tooth
 * may lead at a small negative angle, and a tooth may trail beyond the end.
 *
 * @param overDeg  degrees after which it repeats, of the output's own turn: 360, or 720 for a cam drawn in crank degrees
 * @param pitchDeg distance between neighbouring tooth positions; for teeth listed one by one the least distance
 *                 between two centres. The pole width of a reluctor is told in pitches.
 * @param teeth    the teeth present, by angle; none overlaps the next, nor the last the first of the next turn
 */
public record Wheel(double overDeg, double pitchDeg, List<Tooth> teeth) {

    public Wheel {
        teeth = List.copyOf(teeth);
        if (!(overDeg > 0) || !(pitchDeg > 0)) {
            throw new IllegalArgumentException("a wheel needs a span and a pitch above zero");
        }
        if (teeth.isEmpty()) {
            throw new IllegalArgumentException("a wheel needs at least one tooth");
        }
        for (int i = 0; i < teeth.size(); i++) {
            Tooth tooth = teeth.get(i);
            double next = i + 1 < teeth.size() ? teeth.get(i + 1).leadingDeg() : teeth.get(0).leadingDeg() + overDeg;
            if (!(tooth.trailingDeg() < next)) {
                throw new IllegalArgumentException("tooth " + tooth.number() + " reaches into the next tooth");
            }
        }
    }
}
