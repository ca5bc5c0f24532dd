package understudy.rig;

import java.util.Optional;
import understudy.quantity.Range;
import understudy.quantity.Unit;

/**
 * One output of the audio device, as a circuit: a source, its resistance, and the capacitor that blocks direct voltage.
 *
 * @param fullScaleVolts peak volts of a sample of 1.0 with nothing connected, 1 mV to 60 V
 * @param outputOhms     0.1 ohm to 10 kohm
 * @param couplingFarads the blocking capacitor, or none when direct voltage passes
 * @param inverted       a positive sample gives negative volts
 * @param popVolts       step at power-up, 0 to 60 V either way
 */
public record AudioOutput(
        Spread fullScaleVolts, Spread outputOhms, Optional<Spread> couplingFarads, boolean inverted, double popVolts) {

    /** What a step at power-up may be when it is not known: half of the 5 V that feed a USB device. */
    public static final double USUAL_POP_VOLTS = 2.5;

    /**
     * What a usual line output is taken for until it is measured: 1.0 V rms, which differs by 20 % between units of one
     * maker (a datasheet); its resistance and its capacitor are usual in the trade, not checked.
     */
    public static final AudioOutput NOMINAL = new AudioOutput(new Spread(OutputScale.NOMINAL.fullScaleVolts(), 0.2),
            new Spread(100, 0.5), Optional.of(new Spread(10e-6, 0.2)), false, USUAL_POP_VOLTS);

    public AudioOutput {
        Bounds.check("full scale of the audio output", fullScaleVolts, Bounds.SWING_VOLTS);
        Bounds.check("output resistance of the audio output", outputOhms,
                new Range(0.1, 1e4, Unit.OHM));
        couplingFarads.ifPresent(c -> Bounds.check("coupling capacitor of the audio output", c, Bounds.FARADS));
        Bounds.check("step at power-up", popVolts,
                new Range(0, 60, Unit.VOLT));
    }

    /** The coupling capacitor that makes a corner of {@code cornerHz} with so many ohms around it, output included. */
    public static double couplingFarads(double cornerHz, double totalOhms) {
        return 1 / (2 * Math.PI * cornerHz * totalOhms);
    }

    AudioOutput settled(Pick pick) {
        return new AudioOutput(pick.settle(fullScaleVolts), pick.settle(outputOhms),
                couplingFarads.map(pick::settleCoupling), inverted, popVolts);
    }
}
