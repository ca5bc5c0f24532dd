package understudy.quantity;

/** What kind of thing a quantity measures; quantities of one dimension can be compared and converted. */
public enum Dimension {
    TURNING("a turning speed", "800 rpm"),
    FREQUENCY("a frequency", "100 Hz"),
    ROAD_SPEED("a road speed", "45 km/h"),
    ANGLE("an angle", "5 deg"),
    PART("a part of a whole", "15 %"),
    TIME("a time", "2 s"),
    LENGTH("a length", "2.1 m"),
    VOLTAGE("a voltage", "2.5 V"),
    CURRENT("a current", "1 mA"),
    RESISTANCE("a resistance", "4.7 kohm"),
    CAPACITANCE("a capacitance", "47 nF"),
    INDUCTANCE("an inductance", "10 mH"),
    POWER("a power", "0.5 W"),
    PRESSURE("a pressure", "101 kPa"),
    MASS_FLOW("a mass flow", "12 g/s");

    private final String phrase;
    private final String example;

    Dimension(String phrase, String example) {
        this.phrase = phrase;
        this.example = example;
    }

    /** With its article, to be used in a message: "a voltage". */
    public String phrase() {
        return phrase;
    }

    /** How one is written. */
    public String example() {
        return example;
    }
}
