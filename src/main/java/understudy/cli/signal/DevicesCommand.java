package understudy.cli.signal;

import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import understudy.audio.Devices;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.ExitCode;
import understudy.cli.terminal.HouseCommand;
import understudy.cli.terminal.JsonOption;
import understudy.cli.terminal.Surroundings;
import understudy.view.DeviceText;

/** Lists the audio devices. */
@Command(
        name = "devices",
        sortOptions = false,
        abbreviateSynopsis = true,
        description = "Lists the audio devices, and what each really opens with.",
        footer = {"", "Examples:", "  understudy devices", "  understudy devices --json"})
public final class DevicesCommand extends HouseCommand {

    @Mixin
    private JsonOption json = new JsonOption();

    public DevicesCommand(Surroundings surroundings) {
        super(surroundings);
    }

    @Override
    public Integer call() {
        DeviceText devices = new DeviceText(Devices.outputs(), Devices.inputs(), CommandWords.wording());
        json.print(surroundings, devices::json, devices::lines);
        return ExitCode.FINE;
    }
}
