package understudy.cli;

import java.util.Optional;
import picocli.CommandLine.Option;
import understudy.audio.AudioException;
import understudy.audio.Device;
import understudy.audio.Devices;

/** What calibrating with a patch cable needs to know. */
final class LoopbackOptions {

    private static final int MOST_CHANNELS = 64;

    @Option(names = "--input", paramLabel = "NAME", description = "The audio input at the cable's other end (default: the system's).")
    private String inputName;

    @Option(names = "--input-channel", paramLabel = "NUMBER", description = "Its channel, counted from 1 (default: 1).")
    private String inputChannel;

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
