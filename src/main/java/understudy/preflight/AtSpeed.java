package understudy.preflight;

/**
 * What the input makes of the signal at one steady speed.
 *
 * @param worst   whatever the parts turn out to be within their tolerances: the worst of each, by {@link Corners}
 * @param nominal with every part at its nominal value
 */
public record AtSpeed(Decoding worst, Decoding nominal) {

    public double speedHz() {
        return nominal.speedHz();
    }

    public boolean isDecoded() {
        return worst.isDecoded();
    }
}
