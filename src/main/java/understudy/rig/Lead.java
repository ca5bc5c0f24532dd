package understudy.rig;

import understudy.quantity.Range;
import understudy.quantity.Unit;

/**
 * The two wires to the clips.
 *
 * @param ohms   of each wire, any resistor in it included, 1 mohm to 100 kohm
 * @param farads between the two wires, 1 pF to 100 nF
 */
public record Lead(Spread ohms, double farads) {
    /** Two metres of thin twin cable: 0.1 ohm each way, 100 pF a metre. */
    public static final Lead USUAL = new Lead(Spread.exactly(0.1), 200e-12);

    public Lead {
        Bounds.check("resistance of the lead", ohms, new Range(1e-3, 1e5, Unit.OHM));
        Bounds.check("capacitance of the lead", farads, new Range(1e-12, 1e-7, Unit.FARAD));
    }

    Lead settled(Pick pick) {
        return new Lead(pick.settle(ohms), farads);
    }
}
