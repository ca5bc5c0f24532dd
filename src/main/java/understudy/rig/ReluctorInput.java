package understudy.rig;

import understudy.refusal.Refused;

/**
 * An input for a variable-reluctance sensor. The comparator sees the volts between its two sides when differential, else
 * those above {@code referenceVolts}.
 *
 * @param differential   both pins are signals
 * @param inputOhms      between the pins, or from the pin to ground
 * @param biasVolts      to which the comparator's side of each pin is tied, both to the same
 * @param biasOhms       through which it is tied
 * @param referenceVolts with which a single-ended comparator compares; 0 when differential
 * @param frontEnd       between each pin and its side of the comparator
 * @param arming         when it switches
 * @param timing         the edge that carries the timing, at the comparator
 * @param mostSensorOhms direct resistance across the pins above which it reports an open circuit
 */
public record ReluctorInput(
        boolean differential,
        Spread inputOhms,
        Spread biasVolts,
        Spread biasOhms,
        double referenceVolts,
        FrontEnd frontEnd,
        Arming arming,
        Edge timing,
        double mostSensorOhms)
        implements Input {

    /** Direct resistance of usual coils; used where it is not known what an input takes for open. */
    public static final double MOST_COIL_OHMS = 2000;
    /** A coil of less is not usual. */
    public static final double LEAST_COIL_OHMS = 500;

    /** Which way the comparator's volts go through zero. */
    public enum Edge { RISING, FALLING }

    public ReluctorInput {
        Bounds.check("input resistance", inputOhms, Bounds.OHMS);
        Bounds.check("bias", biasVolts, Bounds.VOLTS);
        Bounds.check("resistance to the bias", biasOhms, Bounds.OHMS);
        Bounds.check("reference", referenceVolts, Bounds.VOLTS);
        Bounds.check("largest sensor resistance", mostSensorOhms, Bounds.OHMS);
        if (differential && referenceVolts != 0) {
            throw new Refused("a differential input was given a reference of " + referenceVolts + " V",
                    "leave it out: the comparator compares the two pins");
        }
    }

    ReluctorInput settled(Pick pick) {
        return new ReluctorInput(differential, pick.settle(inputOhms), pick.settle(biasVolts), pick.settle(biasOhms),
                referenceVolts, frontEnd.settled(pick), arming, timing, mostSensorOhms);
    }
}
