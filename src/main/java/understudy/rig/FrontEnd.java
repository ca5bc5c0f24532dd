package understudy.rig;

import java.util.Optional;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/**
 * What lies between a pin of the module and its comparator.
 *
 * @param seriesOhms   from pin to comparator, 1 ohm or more
 * @param filterFarads from the comparator's side to ground
 * @param clamp        what keeps the comparator's side within bounds
 */
public record FrontEnd(Spread seriesOhms, Optional<Spread> filterFarads, Optional<Clamp> clamp) {
    /** Nothing but a wire, near enough. */
    public static final FrontEnd BARE = new FrontEnd(Spread.exactly(1), Optional.empty(), Optional.empty());

    /**
     * Diodes that conduct below one level and above another, each with a resistance.
     *
     * @param lowVolts  where the lower one begins to conduct
     * @param highVolts where the upper one begins to conduct
     * @param onOhms    of each while it conducts, 0.1 ohm to 100 kohm
     */
    public record Clamp(double lowVolts, double highVolts, double onOhms) {
        public Clamp {
            Bounds.check("lower clamp", lowVolts, Bounds.VOLTS);
            Bounds.check("upper clamp", highVolts, Bounds.VOLTS);
            if (!(lowVolts < highVolts)) {
                throw new Refused("the clamps meet: low at " + Bounds.print(lowVolts, Unit.VOLT) + ", high at "
                        + Bounds.print(highVolts, Unit.VOLT), "the upper one must lie above the lower one");
            }
            Bounds.check("resistance of a clamp", onOhms, new Range(0.1, 1e5, Unit.OHM));
        }
    }

    public FrontEnd {
        Bounds.check("resistance before the comparator", seriesOhms, new Range(1, 1e7, Unit.OHM));
        filterFarads.ifPresent(c -> Bounds.check("filter capacitor", c, Bounds.FARADS));
    }

    FrontEnd settled(Pick pick) {
        return new FrontEnd(pick.settle(seriesOhms), filterFarads.map(pick::settleFilter), clamp);
    }
}
