package understudy.cli;

import java.util.Optional;
import picocli.CommandLine.Option;
import understudy.audio.AudioException;
import understudy.audio.Device;
import understudy.audio.Devices;
import understudy.quantity.Range;
import understudy.quantity.Unit;
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

    /** Of line inputs: 10 kohm is usual, half and twice as much are not rare. */
    private static final Spread USUAL_OHMS = new Spread(10_000, 0.5);
    private static final double KNOWN_TOLERANCE = 0.05;
    private static final Range RESISTANCE = new Range(100, 1e7, Unit.OHM);

    Spread ohms(Given given) {
        return resistance == null ? USUAL_OHMS
                : new Spread(given.quantity("--input-resistance", resistance, RESISTANCE, USUAL_OHMS.nominal()), KNOWN_TOLERANCE);
    }

    Optional<Device> input(Given given) {
        if (inputName == null) {
            return Devices.inputs().stream().findFirst();
        }
        try {
            return Optional.of(Devices.input(inputName));
        } catch (AudioException e) {
            given.problem("--input", e);
            return Optional.empty();
        }
    }

    /** From 0. */
    int channel(Given given) {
        return given.whole("--input-channel", inputChannel, 1, MOST_CHANNELS, 1) - 1;
    }
}
