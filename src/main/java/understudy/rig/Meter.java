package understudy.rig;

import understudy.quantity.Range;
import understudy.quantity.Unit;

/**
 * A voltmeter and how far it may be trusted.
 *
 * @param inputOhms 10 kohm to 1 Gohm; 10 Mohm is usual
 * @param accuracy  as a fraction of the reading, 0 to 0.2
 * @param stepVolts what its last digits may be off on top, 0 to 1 V
 */
public record Meter(double inputOhms, double accuracy, double stepVolts) {
    /** A usual pocket meter on its 20 V range: 10 Mohm, 0.8 % and two counts of 10 mV. */
    public static final Meter USUAL = new Meter(10e6, 0.008, 0.02);

    public Meter {
        Bounds.check("meter's input resistance", inputOhms, new Range(1e4, 1e9, Unit.OHM));
        Bounds.fraction("meter's accuracy", accuracy, 0, 0.2);
        Bounds.check("meter's last digits", stepVolts, new Range(0, 1, Unit.VOLT));
    }

    /** How far a reading may be off, either way. */
    public double offVolts(double readVolts) {
        return Math.abs(readVolts) * accuracy + stepVolts;
    }
}
