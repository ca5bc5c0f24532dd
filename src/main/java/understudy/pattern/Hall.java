package understudy.pattern;

/**
 * A two-level sensor: high while a tooth passes, low in between; every edge crosses the middle of the two levels
 * exactly where the tooth's edge is.
 */
public record Hall(double lowVolts, double highVolts) implements Sensor {

    public Hall {
        if (!Double.isFinite(lowVolts) || !Double.isFinite(highVolts) || lowVolts == highVolts) {
            throw new IllegalArgumentException("low and high must be two different voltages");
        }
    }
}
