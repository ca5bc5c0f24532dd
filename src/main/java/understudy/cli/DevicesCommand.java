package understudy.cli;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import understudy.audio.AudioException;
import understudy.audio.Device;
import understudy.audio.DeviceChoice;
import understudy.audio.Devices;

/** Lists the audio devices. */
@Command(
        name = "devices",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists the audio devices, and what each really opens with.",
        footer = {"", "Examples:", "  understudy devices", "  understudy devices --json"})
final class DevicesCommand implements Callable<Integer> {

    private final Surroundings surroundings;

    @Mixin
    private HelpOption help;

    @Option(names = "--json", description = "Prints JSON, for scripts.")
    private boolean json;

    DevicesCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        return Main.FINE;
    }
}
