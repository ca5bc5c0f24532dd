package understudy.reading;

/**
 * A frequency that was injected and the number that was displayed then.
 *
 * @param frequencyHz events a second, 0 or more
 * @param shown       in the display's unit
 */
public record Pair(double frequencyHz, double shown) {

    public Pair {
        if (!(frequencyHz >= 0 && frequencyHz < Double.POSITIVE_INFINITY) || !Double.isFinite(shown)) {
            throw new IllegalArgumentException("a pair needs a frequency of 0 or more and a finite number, got " + frequencyHz
                    + " Hz, " + shown);
        }
    }
}
