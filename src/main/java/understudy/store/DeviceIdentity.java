package understudy.store;

import java.util.Optional;
import understudy.audio.Device;
import understudy.audio.Devices;

/**
 * An audio device, as it is recognised again.
 *
 * @param name        the system's short name
 * @param description the system's longer name
 * @param vendor      as the system gives it; may be empty
 * @param ordinal     1, or 2 and up for further devices that are alike in all of the above
 */
public record DeviceIdentity(String name, String description, String vendor, int ordinal) {

    public static DeviceIdentity of(Device device) {
        return new DeviceIdentity(device.name(), device.description(), device.vendor(), device.ordinal());
    }

    /** The name in quotes, with its number if there are several alike. */
    public String label() {
        return "\"" + name + (ordinal == 1 ? "" : " #" + ordinal) + "\"";
    }

    /** The device itself; empty when it is not plugged in. */
    public Optional<Device> device() {
        return Devices.outputs().stream().filter(device -> of(device).equals(this)).findFirst();
    }
}
