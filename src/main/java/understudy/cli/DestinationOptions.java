package understudy.cli;

import understudy.refusal.Location;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Option;
import understudy.refusal.Refused;
import understudy.audio.Destination;
import understudy.audio.Device;
import understudy.audio.DeviceChoice;
import understudy.audio.Devices;
import understudy.audio.Silent;
import understudy.audio.SoundFile;
import understudy.store.DeviceIdentity;
import understudy.trace.Job;

/** The options that say where a signal goes, the same for every command that plays in real time. */
final class DestinationOptions {

    @Option(names = "--device", paramLabel = "NAME", description = "The audio output, or a part of its name (default: the system's).")
    private String deviceName;

    @Option(
            names = "--to",
            paramLabel = "PLACE",
            description = "silent: rehearses in real time; or a file ending in .wav. Nothing leaves the machine.")
    private String to;

    /**
     * Where it goes; nothing is opened yet.
     *
     * @param device empty where nothing leaves the machine
     * @param file   empty unless it goes into a file
     * @param asked  whether the user said that nothing is to leave the machine; otherwise there is no output
     */
    record Chosen(Optional<Device> device, Optional<Path> file, boolean asked) {

        boolean leaves() {
            return device.isPresent();
        }

        /** The same, into another file. */
        Chosen into(Path other) {
            return new Chosen(device, Optional.of(other), asked);
        }

        /**
         * With its rate and channels decided.
         *
         * @throws Refused for more channels than the device has
         * @throws Refused   when the device does not open
         */
        Destination destination(Playable playable, OptionalInt askedRateHz) {
            int channels = playable.outputOfChannel().length;
            if (file.isPresent()) {
                return new SoundFile(file.get(), playable.rateHz(), channels);
            } else if (device.isEmpty()) {
                return new Silent(playable.rateHz(), channels);
            }
            try {
                return Devices.choose(device.get(), channels, askedRateHz);
            } catch (Refused e) {
                throw fewerChannels(device.get(), channels, askedRateHz).<RuntimeException>map(fewer -> new Refused("--channels: \"" + device.get().label() + "\" opens with " + fewer + " channels, and " + channels
                                + " are asked for", "name the outputs that you want, in channel order"))
                        .orElseGet(() -> e);
            }
        }

        /** Likewise, on a device that was chosen before. */
        Destination destination(Playable playable, Destination before) {
            return before instanceof DeviceChoice ? before : destination(playable, OptionalInt.empty());
        }

        /** One line about it. */
        String opening(Destination destination) {
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

    /** The same options once more, to be typed behind a command. */
    String again() {
        return (deviceName == null ? "" : " --device \"" + deviceName + "\"") + (to == null ? "" : " --to " + to);
    }

    /** @param ofRig the device that the rig's volts hold for */
    Chosen read(Optional<DeviceIdentity> ofRig, Arguments given) {
        return new Chosen(device(ofRig, given), file(given), to != null);
    }

    private Optional<Device> device(Optional<DeviceIdentity> ofRig, Arguments given) {
        if (to != null && deviceName != null) {
            given.problem("--to", "it does not go together with --device", "leave one of them out");
            return Optional.empty();
        } else if (to != null) {
            return Optional.empty();
        } else if (ofRig.isPresent()) {
            return deviceOfRig(ofRig.get(), given);
        } else if (deviceName == null) {
            return Devices.outputs().stream().findFirst();
        }
        try {
            return Optional.of(Devices.output(deviceName));
        } catch (Refused e) {
            given.add(Location.named("--device"), e);
            return Optional.empty();
        }
    }

    private Optional<Device> deviceOfRig(DeviceIdentity ofRig, Arguments given) {
        Optional<Device> found = RigDevice.find(ofRig);
        if (found.isEmpty()) {
            given.problem("--rig", "its audio output " + RigDevice.label(ofRig) + " is not there",
                    "plug it in, or rehearse with --to silent");
        } else if (deviceName != null) {
            try {
                if (!RigDevice.identity(Devices.output(deviceName)).equals(ofRig)) {
                    given.problem("--device", "the rig's volts hold for its own audio output, " + RigDevice.label(ofRig),
                            "leave --device out, or make a rig for this one");
                }
            } catch (Refused e) {
                given.add(Location.named("--device"), e);
            }
        }
        return found;
    }

    private Optional<Path> file(Arguments given) {
        return to == null || to.equals("silent")
                ? Optional.empty()
                : given.soundFile("--to", to, "give silent, or a name that ends in .wav");
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
}
