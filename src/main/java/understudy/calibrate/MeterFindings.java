package understudy.calibrate;

import java.util.Optional;
import understudy.quantity.NumberText;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.rig.Meter;
import understudy.rig.Spread;

/**
 * What a voltmeter says about an output that plays a steady tone: full scale from the reading with nothing else
 * connected, output resistance from how far a known load pulls it down.
 *
 * <p>Open, the meter's own resistance Rm divides with the output's Ro; with the load R that is Rm beside R. Two
 * equations, solved exactly. Tolerances are worst cases: the meter's share of the reading is the same error in both
 * readings, since both are on one range, and cancels from the resistance; its last digits are not, nor is the load's
 * tolerance.
 *
 * @param fullScaleVolts peak volts of a sample of 1.0 with nothing connected
 * @param outputOhms     of the output; none if only one reading was taken
 * @param leastToTell    the resistance is too low for this load to tell: only its upper limit counts
 */
public record MeterFindings(Spread fullScaleVolts, Optional<Spread> outputOhms, boolean leastToTell) {

    private static final double LEAST_OHMS = 0.1;
    private static final double MOST_OHMS = 1e4;
    private static final double MOST_TOLERANCE = 0.9;

    /**
     * A load on the output.
     *
     * @param ohms  and how far they may be off
     * @param volts rms that the meter shows
     */
    public record Loaded(Spread ohms, double volts) {}

    /**
     * @param meter     that was read
     * @param level     peak of the tone that plays, fraction of full scale
     * @param openVolts rms that it shows with nothing but itself connected
     * @param loaded    a second reading, if one was taken
     * @throws Refused if the readings can't be true together
     */
    public static MeterFindings of(Meter meter, double level, double openVolts, Optional<Loaded> loaded) {
        double off = meter.offVolts(openVolts);
        if (!(openVolts > 2 * meter.stepVolts()) || !(off / openVolts < 0.5)) {
            throw new Refused("the meter shows " + NumberText.of(openVolts, Unit.VOLT) + ", too little to be distinguished from nothing",
                    Remedy.of("set it to volts AC and its lowest range, check that the tone is on this channel and the volume at"
                            + " 100 %, or give a higher ").set(Control.LEVEL));
        }
        double[] ohms = loaded.map(load -> ohms(meter, openVolts, load)).orElse(new double[] {0, 0, 0});
        double unloading = 1 + ohms[1] / meter.inputOhms();
        double fullScale = openVolts * unloading * Math.sqrt(2) / level;
        // without a second reading the output may have any usual resistance; 10 kohm beside 10 Mohm is 0.1 %
        double unknownLoading = loaded.isPresent() ? (ohms[2] - ohms[0]) / 2 / meter.inputOhms() : 1e3 / meter.inputOhms();
        Spread volts = new Spread(fullScale, off / openVolts + unknownLoading);
        if (loaded.isEmpty()) {
            return new MeterFindings(volts, Optional.empty(), false);
        }
        double most = Math.max(LEAST_OHMS, ohms[2]);
        double half = Math.max(ohms[2] - ohms[1], ohms[1] - ohms[0]);
        boolean least = !(ohms[1] >= LEAST_OHMS && half <= MOST_TOLERANCE * ohms[1]);
        Spread resistance = least
                ? new Spread(Math.max(LEAST_OHMS, most / (1 + MOST_TOLERANCE)), MOST_TOLERANCE)
                : new Spread(ohms[1], half / ohms[1]);
        return new MeterFindings(volts, Optional.of(resistance), least);
    }

    /** Lowest, likely and highest resistance. */
    private static double[] ohms(Meter meter, double openVolts, Loaded loaded) {
        double likely = ohms(meter, openVolts, loaded.volts(), loaded.ohms().nominal());
        double off = meter.stepVolts();
        double tolerance = loaded.ohms().tolerance();
        double least = ohms(meter, openVolts - off, loaded.volts() + off, loaded.ohms().nominal() * (1 - tolerance));
        double most = ohms(meter, openVolts + off, Math.max(off / 2, loaded.volts() - off),
                loaded.ohms().nominal() * (1 + tolerance));
        if (!(loaded.volts() > off) || most <= 0) {
            throw new Refused("the meter shows " + NumberText.of(loaded.volts(), Unit.VOLT) + " with the load and " + NumberText.of(openVolts, Unit.VOLT)
                    + " without", (most <= 0
                            ? "a load can't raise it: take both readings again, on the same range"
                            : "the load swallows all of it: is the output shorted? take a load of more ohms"));
        }
        if (likely > MOST_OHMS) {
            throw new Refused("these readings mean an output resistance of "
                    + new Quantity(likely, Unit.OHM).rounded(3) + ", more than any audio output has ("
                    + new Quantity(MOST_OHMS, Unit.OHM) + ")", "check the load's ohms and both readings");
        }
        return new double[] {least, likely, most};
    }

    /** Vopen = V Rm/(Ro + Rm) and Vload = V Rp/(Ro + Rp), Rp = R beside Rm; solved for Ro. */
    private static double ohms(Meter meter, double openVolts, double loadedVolts, double loadOhms) {
        double beside = loadOhms * meter.inputOhms() / (loadOhms + meter.inputOhms());
        double ratio = openVolts / loadedVolts;
        // V = Vopen (1 + Ro/Rm) = Vload (1 + Ro/Rp)
        return (ratio - 1) / (1 / beside - ratio / meter.inputOhms());
    }
}
