package understudy.cli;

import java.util.Optional;
import understudy.audio.Device;
import understudy.audio.Devices;
import understudy.store.DeviceIdentity;

/** Recognises the audio device that a rig was made for. */
final class RigDevice {

    private RigDevice() {}

    static DeviceIdentity identity(Device device) {
        return new DeviceIdentity(device.name(), device.description(), device.vendor(), device.ordinal());
    }

    static String label(DeviceIdentity identity) {
        return "\"" + identity.name() + (identity.ordinal() == 1 ? "" : " #" + identity.ordinal()) + "\"";
    }

    /** Empty when it is not plugged in. */
    static Optional<Device> find(DeviceIdentity identity) {
        return Devices.outputs().stream().filter(device -> identity(device).equals(identity)).findFirst();
    }
}
