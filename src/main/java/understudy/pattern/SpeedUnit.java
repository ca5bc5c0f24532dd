package understudy.pattern;

import java.util.Arrays;
import understudy.quantity.Dimension;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;

/** The units a speed is told in. */
public enum SpeedUnit {
    RPM(Unit.RPM, 100_000, 1 / 60.0, false),
    HZ(Unit.HERTZ, 200_000, 1, false),
    KMH(Unit.KMH, 1000, 1 / 3.6, true),
    /** The international mile, 1609.344 m exactly. */
    MPH(Unit.MPH, 600, 1609.344 / 3600, true);

    private final Unit unit;
    private final double most;
    private final double perSecond;
    private final boolean road;

    SpeedUnit(Unit unit, double most, double perSecond, boolean road) {
        this.unit = unit;
        this.most = most;
        this.perSecond = perSecond;
        this.road = road;
    }

    public String symbol() {
        return unit.symbol();
    }

    Unit unit() {
        return unit;
    }

    /** The highest value that a file may declare. */
    double most() {
        return most;
    }

    /** A speed as a person writes it. Without a circumference only turning speeds and frequencies make sense. */
    static Quantity parse(String written, boolean road) {
        return road
                ? Quantity.parse(written, Dimension.ROAD_SPEED, Dimension.TURNING, Dimension.FREQUENCY)
                : Quantity.parse(written, Dimension.TURNING, Dimension.FREQUENCY);
    }

    static SpeedUnit of(Quantity speed) {
        return Arrays.stream(values()).filter(u -> u.unit == speed.unit()).findFirst().orElseThrow();
    }

    /** Whether this is a road speed, which turns into turns per second only through a rolling circumference. */
    public boolean needsCircumference() {
        return road;
    }

    /** Turns per second of {@code value} in this unit; {@code metresPerTurn} counts for road speeds only. */
    public double toHz(double value, double metresPerTurn) {
        // rpm is divided, not multiplied by a rounded 1/60, so that 60 rpm is exactly 1 Hz
        double perSecondValue = this == RPM ? value / 60.0 : value * perSecond;
        return road ? perSecondValue / metresPerTurn : perSecondValue;
    }

    /** A value in this unit from turns per second. */
    public double fromHz(double hz, double metresPerTurn) {
        double perSecondValue = road ? hz * metresPerTurn : hz;
        return this == RPM ? perSecondValue * 60.0 : perSecondValue / perSecond;
    }
}
