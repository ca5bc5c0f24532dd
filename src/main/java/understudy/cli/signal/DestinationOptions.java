package understudy.cli.signal;

import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import understudy.audio.Device;
import understudy.bench.Outlet;
import understudy.cli.terminal.Arguments;
import understudy.cli.terminal.CommandWords;
import understudy.store.DeviceIdentity;

/** The options that say where a signal goes, the same for every command that plays in real time. */
final class DestinationOptions {

    @Option(names = "--device", paramLabel = "NAME", description = "The audio output, or a part of its name (default: the system's).")
    private String deviceName;

    @Option(
            names = "--to",
            paramLabel = "PLACE",
            description = "silent: rehearses in real time; or a file (WAV). Nothing leaves the machine.")
    private String to;

    /** The same options once more, to be typed behind a command. */
    String again() {
        return (deviceName == null ? "" : " --device " + CommandWords.inQuotes(deviceName)) + (to == null ? "" : " --to " + CommandWords.quoted(to));
    }

    /** @param ofRig the device that the rig's volts hold for */
    Outlet read(Optional<DeviceIdentity> ofRig, Arguments given) {
        return new Outlet(device(ofRig, given), file(given), to != null);
    }

    private Optional<Device> device(Optional<DeviceIdentity> ofRig, Arguments given) {
        if (to != null && deviceName != null) {
            given.problem("--to", "it does not go together with --device", "leave one of them out");
        }
        return to != null ? Optional.empty() : Outlet.device(Optional.ofNullable(deviceName), ofRig, given);
    }

    private Optional<Path> file(Arguments given) {
        return to == null || to.equals("silent")
                ? Optional.empty()
                : given.soundFile("--to", to, "give silent, or a name that ends in .wav");
    }
}
