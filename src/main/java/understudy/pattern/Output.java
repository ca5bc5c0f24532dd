package understudy.pattern;

/**
 * One signal of a pattern; it goes to one channel of the audio device.
 *
 * @param name     unique in the pattern
 * @param ratio    turns of this output for one turn of the speed, 0 (standing still) or more; a camshaft has 0.5
 * @param phaseDeg how much later than drawn the signal comes, in degrees of the speed's turn
 * @param signal   what is played
 */
public record Output(String name, double ratio, double phaseDeg, Signal signal) {

    public Output {
        if (name.isBlank()) {
            throw new IllegalArgumentException("an output needs a name");
        }
        if (!(ratio >= 0 && ratio < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a ratio must be 0 or more, got " + ratio);
        }
        if (!Double.isFinite(phaseDeg)) {
            throw new IllegalArgumentException("a phase must be a number of degrees, got " + phaseDeg);
        }
    }
}
