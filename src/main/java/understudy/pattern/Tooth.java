package understudy.pattern;

/**
 * One tooth, from its leading to its trailing edge in the direction of rotation.
 *
 * @param number      position on the wheel, counted from 1; missing positions keep their numbers
 * @param leadingDeg  where it begins to pass
 * @param widthDeg    above zero
 */
public record Tooth(int number, double leadingDeg, double widthDeg) {

    public Tooth {
        if (!(widthDeg > 0) || !Double.isFinite(leadingDeg)) {
            throw new IllegalArgumentException("tooth " + number + " needs an angle, and a width above zero");
        }
    }

    public double trailingDeg() {
        return leadingDeg + widthDeg;
    }

    public double centreDeg() {
        return leadingDeg + widthDeg / 2;
    }
}
