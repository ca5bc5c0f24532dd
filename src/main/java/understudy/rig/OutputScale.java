package understudy.rig;

/**
 * What full scale of an audio output is worth in volts.
 *
 * @param fullScaleVolts peak volts of a sample of 1.0
 * @param calibrated     measured on this output, not assumed
 */
public record OutputScale(double fullScaleVolts, boolean calibrated) {

    /** A usual line output, 1.0 V rms for a full-scale sine; units differ by 20 % and more. */
    public static final OutputScale NOMINAL = new OutputScale(Math.sqrt(2), false);

    /** Of samples that are parts of full scale already. */
    public static final OutputScale PARTS = new OutputScale(1, false);

    public OutputScale {
        if (!(fullScaleVolts > 0 && fullScaleVolts < 1000)) {
            throw new IllegalArgumentException("full scale must be above 0 V, got " + fullScaleVolts + " V");
        }
    }
}
