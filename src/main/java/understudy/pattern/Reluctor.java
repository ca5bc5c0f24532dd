package understudy.pattern;

/**
 * A variable-reluctance sensor: volts in proportion to speed, up to a ceiling. The flux is the tooth profile (1 on a
 * tooth, 0 beside it) smoothed by a Gaussian of the pole piece's width; the volts are its rate of change. In normal
 * polarity the volts rise while a tooth approaches and cross zero, going negative, at its centre.
 *
 * @param peakToPeakVolts between evenly spaced teeth of this wheel, at {@code atHz}
 * @param atHz            turns per second of the output itself (its ratio counted) at which that is so
 * @param ceilingVolts    peak to peak; with rising speed the volts grow no further
 * @param polePitches     standard deviation of the Gaussian, in pitches, usually 0.15 to 0.35
 * @param reversed        the two wires swapped: the crossing at a tooth's centre goes positive
 */
public record Reluctor(
        double peakToPeakVolts, double atHz, double ceilingVolts, double polePitches, boolean reversed)
        implements Sensor {

    public Reluctor {
        if (!(peakToPeakVolts > 0) || !(atHz > 0) || !(ceilingVolts > 0)) {
            throw new IllegalArgumentException("a reluctor needs volts, a speed and a ceiling above zero");
        }
        if (!(polePitches > 0 && polePitches <= 1)) {
            throw new IllegalArgumentException("a pole width must be above 0 and at most 1 pitch, got " + polePitches);
        }
    }
}
