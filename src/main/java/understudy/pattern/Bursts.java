package understudy.pattern;

import java.util.List;

/**
 * Knock-like ringing: at each angle {@code peakVolts * exp(-t/decay) * sin(2 pi f t)} starts, over white noise.
 *
 * @param frequencyHz  of the ringing
 * @param decaySeconds time constant, to 1/e
 * @param peakVolts    of the undamped envelope at the start
 * @param overDeg      degrees after which the angles repeat, of the output's own turn
 * @param atDeg        ascending, within [0, over)
 * @param noiseVolts   rms over the whole band, 0 or more
 */
public record Bursts(
        double frequencyHz, double decaySeconds, double peakVolts, double overDeg, List<Double> atDeg,
        double noiseVolts)
        implements Signal {

    public Bursts {
        atDeg = List.copyOf(atDeg);
        if (!(frequencyHz > 0) || !(decaySeconds > 0) || !(peakVolts > 0) || !(overDeg > 0) || !(noiseVolts >= 0)) {
            throw new IllegalArgumentException("a burst needs a frequency, a decay and volts above zero");
        }
        if (atDeg.isEmpty()) {
            throw new IllegalArgumentException("bursts need at least one angle");
        }
    }
}
