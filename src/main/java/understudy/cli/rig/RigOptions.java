package understudy.cli.rig;

import java.time.Instant;
import java.util.Optional;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import understudy.audio.Devices;
import understudy.cli.terminal.Arguments;
import understudy.refusal.Location;
import understudy.refusal.Refused;
import understudy.rig.AudioOutput;
import understudy.rig.CurrentLimits;
import understudy.rig.Divider;
import understudy.rig.Lead;
import understudy.store.DeviceIdentity;
import understudy.store.NamedRig;

/** The options that say what a rig is made of, for making and for editing one. */
final class RigOptions {

    @Option(names = "--device", paramLabel = "NAME", description = "The audio output, or a part of its name; or any.")
    private String device;

    @Mixin
    private OutputOptions output;

    @Mixin
    private PartOptions parts;

    @Mixin
    private LimitOptions limits;

    @Option(names = "--notes", paramLabel = "TEXT", description = "Anything that you want to remember.")
    private String notes;

    boolean given() {
        return device != null || output.given() || parts.given() || limits.given() || notes != null;
    }

    boolean changesOutput() {
        return output.given() || device != null;
    }

    /** A new rig. */
    NamedRig make(String name, Instant now, Arguments given) {
        return read(name, new NamedRig("unnamed", Optional.empty(), AudioOutput.NOMINAL, false, Optional.empty(), Lead.USUAL,
                CurrentLimits.STANDARD, "", now, now), now, given);
    }

    /** What is not given stays as it is. Numbers given by hand, or another device, are no longer a calibration. */
    NamedRig read(String name, NamedRig before, Instant now, Arguments given) {
        AudioOutput audio = output.read(before.output(), given);
        Optional<Divider> divider = parts.divider(before.divider(), given);
        Lead lead = parts.lead(Optional.of(before.lead()), given);
        CurrentLimits heldTo = limits.read(before.limits(), given);
        Optional<DeviceIdentity> identity = device(before.device(), given);
        return given.attempt("NAME", () -> new NamedRig(name, identity, audio, before.calibrated() && !changesOutput(), divider,
                lead, heldTo, notes == null ? before.notes() : notes.strip(), before.created(), now)).orElse(before);
    }

    private Optional<DeviceIdentity> device(Optional<DeviceIdentity> otherwise, Arguments given) {
        if (device == null) {
            return otherwise;
        } else if (device.equals("any")) {
            return Optional.empty();
        }
        try {
            return Optional.of(DeviceIdentity.of(Devices.output(device)));
        } catch (Refused e) {
            given.add(Location.named("--device"), e);
            return otherwise;
        }
    }
}
