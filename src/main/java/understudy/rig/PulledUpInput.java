package understudy.rig;

import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/**
 * An input with a resistor to a supply, which a Hall sensor or a switch pulls to ground.
 *
 * @param supplyVolts    0.5 to 60 V
 * @param pullUpOhms     from the supply to the pin
 * @param lowBelowVolts  at the comparator: certainly low below this
 * @param highAboveVolts at the comparator: certainly high above this
 * @param frontEnd       between pin and comparator
 */
public record PulledUpInput(
        Spread supplyVolts, Spread pullUpOhms, double lowBelowVolts, double highAboveVolts, FrontEnd frontEnd)
        implements Input {

    public PulledUpInput {
        Bounds.check("supply of the pull-up", supplyVolts, new Range(0.5, 60, Unit.VOLT));
        Bounds.check("pull-up resistor", pullUpOhms, Bounds.OHMS);
        if (!(lowBelowVolts > 0 && lowBelowVolts < highAboveVolts && highAboveVolts < supplyVolts.nominal())) {
            throw new Refused("the thresholds are given as low below " + lowBelowVolts + " V and high above "
                    + highAboveVolts + " V", "both must lie between 0 V and the supply of "
                    + Bounds.print(supplyVolts.nominal(), Unit.VOLT) + ", the low one below the high one");
        }
    }

    @Override
    public boolean differential() {
        return false;
    }

    /** The most that a sensor of this input has to sink: all that the pull-up can give. */
    double mostSinkAmps() {
        return supplyVolts.at(1) / pullUpOhms.at(-1);
    }

    PulledUpInput settled(Pick pick) {
        return new PulledUpInput(pick.settle(supplyVolts), pick.settle(pullUpOhms), lowBelowVolts, highAboveVolts,
                frontEnd.settled(pick));
    }
}
