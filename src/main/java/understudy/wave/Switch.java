package understudy.wave;

import understudy.pattern.Fault;
import understudy.pattern.When;

/** Says whether one fault acts: switched on by the hand, within its time, in one of its turns, and chance willing. */
final class Switch {
    private final long bit;
    private final When when;
    private final Chance chance;
    private final double fromFrame;
    private final double untilFrame;

    /** @param index of the fault in its pattern */
    Switch(Fault fault, int index, long seed, int rateHz) {
        this.bit = 1L << index;
        this.when = fault.place().when();
        this.chance = new Chance(seed, index);
        this.fromFrame = when.fromSeconds() * rateHz;
        this.untilFrame = when.untilSeconds() * rateHz;
    }

    /**
     * @param turn     whole turns of the output since the start
     * @param frame    since the start
     * @param faultsOn what the hand has switched on
     */
    boolean acts(long turn, double frame, long faultsOn) {
        return (faultsOn & bit) != 0
                && frame >= fromFrame
                && frame < untilFrame
                && Math.floorMod(turn, (long) when.everyTurns()) == 0
                && (when.chance() == 1 || chance.uniform(turn) < when.chance());
    }
}
