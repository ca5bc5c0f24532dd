package understudy.cli.rig;

import java.util.Optional;
import picocli.CommandLine.Option;
import understudy.audio.Device;
import understudy.audio.Devices;
import understudy.cli.terminal.Arguments;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Location;
import understudy.refusal.Refused;
import understudy.rig.Spread;

/** What calibrating with a patch cable needs to know. */
final class LoopbackOptions {

    private static final int MOST_CHANNELS = 64;

    @Option(names = "--input", paramLabel = "NAME", description = "The audio input at the cable's other end (default: the system's).")
    private String inputName;

    @Option(names = "--input-channel", paramLabel = "NUMBER", description = "Its channel, counted from 1 (default: 1).")
    private String inputChannel;

    @Option(names = "--input-resistance", paramLabel = "OHMS", description = "Of that input, if you know it (default: about 10 kohm).")
    private String resistance;

    @Option(names = "--input-full-scale", paramLabel = "VOLTS", description = "Peak volts (not rms) of the largest sample that this input"
            + " records, if you know them, like \"1.2 V 3%%\" (default: 5 %%): then the cable measures volts too.")
    private String fullScale;

    /** Of line inputs: 10 kohm is usual, half and twice as much are not rare. */
    private static final Spread USUAL_OHMS = new Spread(10_000, 0.5);
    private static final double KNOWN_TOLERANCE = 0.05;
    private static final Range RESISTANCE = new Range(100, 1e7, Unit.OHM);

    private static final Range FULL_SCALE = new Range(0.05, 60, Unit.VOLT);
    private static final double FULL_SCALE_TOLERANCE = 0.05;

    /**
     * @param input          none if the machine has none
     * @param channel        from 0
     * @param ohms           resistance of the input, which the output and its coupling capacitor work into
     * @param fullScaleVolts peak, of the input; none if nobody knows
     */
    record Asked(Optional<Device> input, int channel, Spread ohms, Optional<Spread> fullScaleVolts) {}

    Asked read(boolean used, Arguments given) {
        Spread ohms = given.part("--input-resistance", resistance, RESISTANCE, KNOWN_TOLERANCE).orElse(USUAL_OHMS);
        Optional<Spread> volts = given.part("--input-full-scale", fullScale, FULL_SCALE, FULL_SCALE_TOLERANCE);
        int channel = given.whole("--input-channel", inputChannel, 1, MOST_CHANNELS, 1) - 1;
        return new Asked(used ? input(given) : Optional.empty(), channel, ohms, volts);
    }

    private Optional<Device> input(Arguments given) {
        if (inputName == null) {
            return Devices.inputs().stream().findFirst();
        }
        try {
            return Optional.of(Devices.input(inputName));
        } catch (Refused e) {
            given.add(Location.named("--input"), e);
            return Optional.empty();
        }
    }
}
