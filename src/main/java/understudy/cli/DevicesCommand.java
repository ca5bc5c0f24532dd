package understudy.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import understudy.audio.Device;
import understudy.audio.DeviceChoice;
import understudy.audio.Devices;
import understudy.refusal.Refused;
import understudy.text.Json;
import understudy.text.Table;

/** Lists the audio devices. */
@Command(
        name = "devices",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists the audio devices, and what each really opens with.",
        footer = {"", "Examples:", "  understudy devices", "  understudy devices --json"})
final class DevicesCommand extends HouseCommand {

    private static final int[] RATES_HZ = {44_100, 48_000, 96_000, 192_000};
    private static final int[] CHANNELS = {2, 4, 6, 8};

    @Option(names = "--json", description = "Prints JSON, for scripts.")
    private boolean json;

    DevicesCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        List<Device> outputs = Devices.outputs();
        List<Device> inputs = Devices.inputs();
        if (json) {
            surroundings.out().println(Json.text(Json.map(
                    "outputs", outputs.stream().map(device -> json(device, opened(device))).toList(),
                    "inputs", inputs.stream().map(device -> json(device, List.of())).toList())));
            return Main.FINE;
        }
        if (outputs.isEmpty()) {
            surroundings.out().println("This machine has no audio output. Plug one in, then look again; until then 'understudy"
                    + " play'");
            surroundings.out().println("rehearses silently.");
        } else {
            surroundings.out().println("Outputs, for --device; a part of the name will do:");
            outputs.forEach(this::print);
        }
        if (!inputs.isEmpty()) {
            surroundings.out().println();
            surroundings.out().println("Inputs:");
            inputs.forEach(device -> surroundings.out().println("  " + named(device)));
        }
        return Main.FINE;
    }

    private void print(Device device) {
        surroundings.out().println("  " + named(device));
        List<DeviceChoice> opened = opened(device);
        if (opened.isEmpty()) {
            surroundings.out().println("    opens with none of the usual formats; another program may be using it");
        }
        Table table = new Table();
        for (int channels : CHANNELS) {
            List<String> row = opened.stream().filter(choice -> choice.channels() == channels)
                    .map(choice -> choice.rateHz() + " Hz " + choice.format().bits() + " bits" + (choice.listed() ? "" : " (converted?)"))
                    .toList();
            if (!row.isEmpty()) {
                table.row("    " + channels + " channels:", String.join(", ", row));
            }
        }
        table.lines().forEach(surroundings.out()::println);
    }

    private static String named(Device device) {
        String more = device.description().isBlank() ? "" : ", " + device.description();
        return "\"" + device.label() + "\"" + more + (device.isDefault() ? " (used unless another is named)" : "");
    }

    /** What really opens, found out by opening it; what a system lists is often more, or less. */
    private static List<DeviceChoice> opened(Device device) {
        List<DeviceChoice> opened = new ArrayList<>();
        for (int channels : CHANNELS) {
            for (int rateHz : RATES_HZ) {
                try {
                    DeviceChoice choice = Devices.choose(device, channels, OptionalInt.of(rateHz));
                    if (choice.channels() == channels) {
                        opened.add(choice);
                    }
                } catch (Refused e) {
                    // this one doesn't open: that is the finding
                }
            }
        }
        return opened;
    }

    private static Map<String, Object> json(Device device, List<DeviceChoice> opened) {
        return Json.map(
                "label", device.label(),
                "description", device.description(),
                "vendor", device.vendor(),
                "default", device.isDefault(),
                "opens", opened.stream().map(choice -> Json.map(
                        "channels", choice.channels(), "rateHz", choice.rateHz(), "bits", choice.format().bits(),
                        "listed", choice.listed())).toList());
    }
}
