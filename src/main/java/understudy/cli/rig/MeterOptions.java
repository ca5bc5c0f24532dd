package understudy.cli.rig;

import java.util.Optional;
import picocli.CommandLine.Option;
import understudy.cli.terminal.Arguments;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.rig.Meter;
import understudy.rig.Spread;

/** What calibrating with a meter needs to know. */
final class MeterOptions {

    /** Where pocket meters show volts AC truly, and AC coupling takes little even from a heavy load. */
    private static final Range FREQUENCY = new Range(40, 1000, Unit.HERTZ);
    private static final double USUAL_HZ = 200;
    private static final Range LOAD = new Range(1, 1e6, Unit.OHM);
    private static final Range TOLERANCE = new Range(0, 20, Unit.PERCENT);
    private static final double USUAL_TOLERANCE_PERCENT = 1;
    private static final Range ACCURACY = new Range(0, 20, Unit.PERCENT);
    private static final double USUAL_ACCURACY_PERCENT = 1;
    private static final Range DIGITS = new Range(0, 1, Unit.VOLT);
    private static final double USUAL_DIGITS_VOLTS = 0.003;
    private static final Range RESISTANCE = new Range(1e4, 1e9, Unit.OHM);
    private static final double USUAL_RESISTANCE_OHMS = 10e6;

    @Option(names = "--frequency", paramLabel = "FREQUENCY", description = "Of the tone for the meter, 40 to 1000 Hz (default: 200 Hz).")
    private String frequency;

    @Option(names = "--load", paramLabel = "OHMS", description = "A resistor to load the output with for a second reading, like \"1 kohm\".")
    private String load;

    @Option(names = "--load-tolerance", paramLabel = "PART", description = "Of that resistor (default: 1 %%).")
    private String tolerance;

    @Option(names = "--meter-accuracy", paramLabel = "PART", description = "The meter's accuracy on volts AC, of the reading (default: 1 %%).")
    private String accuracy;

    @Option(names = "--meter-digits", paramLabel = "VOLTS", description = "What its last digits may be off on top (default: 3 mV).")
    private String digits;

    @Option(names = "--meter-resistance", paramLabel = "OHMS", description = "Its input resistance (default: 10 Mohm).")
    private String resistance;

    /** {@code load} is empty when there is no second reading. */
    record Asked(int frequencyHz, Optional<Spread> load, Meter meter) {}

    Asked read(Arguments given) {
        double hz = given.quantity("--frequency", frequency, FREQUENCY, USUAL_HZ);
        double ohms = given.quantity("--load", load, LOAD, LOAD.from());
        double loadOff = given.quantity("--load-tolerance", tolerance, TOLERANCE, USUAL_TOLERANCE_PERCENT) / 100;
        double meterOff = given.quantity("--meter-accuracy", accuracy, ACCURACY, USUAL_ACCURACY_PERCENT) / 100;
        double digitsVolts = given.quantity("--meter-digits", digits, DIGITS, USUAL_DIGITS_VOLTS);
        double meterOhms = given.quantity("--meter-resistance", resistance, RESISTANCE, USUAL_RESISTANCE_OHMS);
        return new Asked((int) Math.round(hz), load == null ? Optional.empty() : Optional.of(new Spread(ohms, loadOff)),
                new Meter(meterOhms, meterOff, digitsVolts));
    }
}
