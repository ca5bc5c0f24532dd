package understudy.pattern;

/** The units a speed is told in. */
public enum SpeedUnit {
    RPM("rpm", 1 / 60.0, false),
    HZ("Hz", 1, false),
    KMH("km/h", 1 / 3.6, true),
    /** The international mile, 1609.344 m exactly. */
    MPH("mph", 1609.344 / 3600, true);

    private final String symbol;
    private final double perSecond;
    private final boolean road;

    SpeedUnit(String symbol, double perSecond, boolean road) {
        this.symbol = symbol;
        this.perSecond = perSecond;
        this.road = road;
    }

    public String symbol() {
        return symbol;
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
