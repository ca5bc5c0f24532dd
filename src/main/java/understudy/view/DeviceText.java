package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import understudy.audio.Device;
import understudy.audio.DeviceChoice;
import understudy.audio.Devices;
import understudy.refusal.Control;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.text.Table;

/** The audio devices of this machine, and what each output really opens with. */
public final class DeviceText {

    private static final int[] RATES_HZ = {44_100, 48_000, 96_000, 192_000};
    private static final int[] CHANNELS = {2, 4, 6, 8};

    private record Opening(int channels, int rateHz, int bits, boolean listed) {}

    private record Listed(String label, String description, String vendor, boolean default_, List<Opening> opens) {}

    private record All(List<Listed> outputs, List<Listed> inputs) {}

    private final List<Device> outputs;
    private final List<Device> inputs;
    private final Wording wording;

    public DeviceText(List<Device> outputs, List<Device> inputs, Wording wording) {
        this.outputs = List.copyOf(outputs);
        this.inputs = List.copyOf(inputs);
        this.wording = wording;
    }

    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        if (outputs.isEmpty()) {
            lines.add("This machine has no audio output. Plug one in, then look again; until then a signal can");
            lines.add("only be rehearsed silently.");
        } else {
            lines.add(Remedy.of("Outputs, for ").set(Control.DEVICE).then("; a part of the name will do:").text(wording));
            outputs.forEach(device -> lines.addAll(output(device)));
        }
        if (!inputs.isEmpty()) {
            lines.add("");
            lines.add("Inputs:");
            inputs.forEach(device -> lines.add("  " + named(device)));
        }
        return lines;
    }

    private static List<String> output(Device device) {
        List<String> lines = new ArrayList<>(List.of("  " + named(device)));
        List<DeviceChoice> opened = opened(device);
        if (opened.isEmpty()) {
            lines.add("    opens with none of the usual formats; another program may be using it");
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
        lines.addAll(table.lines());
        return lines;
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

    /** For scripts. */
    public Object json() {
        return new All(outputs.stream().map(device -> listed(device, opened(device))).toList(),
                inputs.stream().map(device -> listed(device, List.of())).toList());
    }

    private static Listed listed(Device device, List<DeviceChoice> opened) {
        return new Listed(device.label(), device.description(), device.vendor(), device.isDefault(), opened.stream().map(choice ->
                new Opening(choice.channels(), choice.rateHz(), choice.format().bits(), choice.listed())).toList());
    }
}
