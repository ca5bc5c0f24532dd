package understudy.pattern;

/**
 * A plain repeating shape.
 *
 * @param shape           sine, triangle or square
 * @param frequencyHz     when fixed, else NaN
 * @param cyclesPerTurn   when tied to the output's turn, else NaN
 * @param peakToPeakVolts above zero
 * @param offsetVolts     middle between the two peaks
 * @param part            of the cycle: the rising part of a triangle (0 and 1 are ramps), the high part of a square
 *                        (above 0, below 1); 0.5 for a sine
 */
public record Tone(
        Shape shape,
        double frequencyHz,
        double cyclesPerTurn,
        double peakToPeakVolts,
        double offsetVolts,
        double part)
        implements Signal {

    /** A sine starts at its middle, rising; a triangle at its lowest, rising; a square at its rising edge. */
    public enum Shape { SINE, TRIANGLE, SQUARE }

    public Tone {
        if (Double.isNaN(frequencyHz) == Double.isNaN(cyclesPerTurn)) {
            throw new IllegalArgumentException("a tone has either a frequency of its own or cycles per turn");
        }
        if (frequencyHz <= 0 || cyclesPerTurn <= 0 || !(peakToPeakVolts > 0) || !Double.isFinite(offsetVolts)) {
            throw new IllegalArgumentException("frequency, cycles per turn and volts must be above zero");
        }
        if (!(part >= 0 && part <= 1) || shape == Shape.SQUARE && (part == 0 || part == 1)) {
            throw new IllegalArgumentException("the part must lie within the cycle, got " + part);
        }
    }

    public boolean fixedFrequency() {
        return !Double.isNaN(frequencyHz);
    }
}
