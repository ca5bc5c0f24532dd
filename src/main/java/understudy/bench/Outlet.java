package understudy.bench;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import understudy.audio.Destination;
import understudy.audio.Device;
import understudy.audio.DeviceChoice;
import understudy.audio.Devices;
import understudy.audio.Silent;
import understudy.audio.SoundFile;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refusals;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.store.DeviceIdentity;
import understudy.trace.Job;

/**
 * Where a signal goes; nothing is opened yet.
 *
 * @param device empty where nothing leaves the machine
 * @param file   empty unless it goes into a file
 * @param asked  whether the user said that nothing is to leave the machine; otherwise there is no output
 */
public record Outlet(Optional<Device> device, Optional<Path> file, boolean asked) {

    /**
     * The audio output that is meant: the one that the rig's volts hold for, the named one, or the system's own.
     *
     * @param name  a part of its name, if one was given
     * @param ofRig the one that a rig is bound to
     */
    public static Optional<Device> device(Optional<String> name, Optional<DeviceIdentity> ofRig, Refusals problems) {
        Optional<Device> named = name.flatMap(part -> problems.attempt(Location.of(Control.DEVICE), () -> Devices.output(part)));
        if (ofRig.isEmpty()) {
            return name.isPresent() ? named : Devices.outputs().stream().findFirst();
        }
        Optional<Device> found = ofRig.get().device();
        if (found.isEmpty()) {
            problems.add(Control.RIG, "its audio output " + ofRig.get().label() + " is not there",
                    Remedy.of("plug it in, or rehearse with ").set(Control.DESTINATION, "silent"));
        } else if (named.isPresent() && !DeviceIdentity.of(named.get()).equals(ofRig.get())) {
            problems.add(Control.DEVICE, "the rig's volts hold for its own audio output, " + ofRig.get().label(),
                    "leave it out, or make a rig for this one");
        }
        return found;
    }

    /** Whether a signal leaves the machine. */
    public boolean leaves() {
        return device.isPresent();
    }

    /** The same; into a file with this number at the end of its name, if it goes into a file. */
    public Outlet numbered(long number) {
        return new Outlet(device, file.map(path -> {
            String name = path.getFileName().toString();
            int dot = name.lastIndexOf('.');
            return path.resolveSibling(name.substring(0, dot) + "-" + number + name.substring(dot));
        }), asked);
    }

    /**
     * With its rate and channels decided.
     *
     * @param askedRateHz the rate, if one was asked for; a device otherwise has its own
     * @throws Refused for more channels than the device has, or when it does not open
     */
    public Destination destination(SignalPlan plan, OptionalInt askedRateHz) {
        int channels = plan.channels().channels();
        if (file.isPresent()) {
            return new SoundFile(file.get(), plan.rateHz(), channels);
        } else if (device.isEmpty()) {
            return new Silent(plan.rateHz(), channels);
        }
        try {
            return Devices.choose(device.get(), channels, askedRateHz);
        } catch (Refused e) {
            throw fewerChannels(device.get(), channels, askedRateHz).map(fewer -> new Refused(new Refusal(
                    Location.of(Control.CHANNELS), "\"" + device.get().label() + "\" opens with " + fewer + " channels, and "
                    + channels + " are asked for", "name the outputs that you want, in channel order"))).orElse(e);
        }
    }

    /** How many the device opens with, if it is only that so many are too many. */
    private static Optional<Integer> fewerChannels(Device device, int channels, OptionalInt rateHz) {
        for (int fewer = channels - 1; fewer > 0; fewer--) {
            try {
                return Optional.of(Devices.choose(device, fewer, rateHz).channels()).filter(opened -> opened < channels);
            } catch (Refused e) {
                // fewer still
            }
        }
        return Optional.empty();
    }

    /** One line about it. */
    public String note(Destination destination) {
        if (destination instanceof DeviceChoice choice) {
            return "audio output \"" + choice.device().label() + "\", " + choice.rateHz() + " Hz, " + choice.format().bits()
                    + " bits, " + choice.channels() + " channels"
                    + (choice.listed() ? "" : "; the system may convert this on the way");
        } else if (destination instanceof SoundFile sound) {
            return "playing into " + sound.path() + ", in real time; " + Job.REHEARSED;
        }
        return (asked ? "" : "no audio output on this machine: ") + "rehearsing silently, in real time; " + Job.REHEARSED;
    }
}
