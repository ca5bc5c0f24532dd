package understudy.store;

import java.time.Instant;
import java.util.Optional;
import understudy.refusal.Refused;
import understudy.rig.AudioOutput;
import understudy.rig.CurrentLimits;
import understudy.rig.Divider;
import understudy.rig.Lead;
import understudy.rig.Rig;

/**
 * A rig that somebody has on the bench, by name.
 *
 * @param name       1 to 40 letters, digits, - and _; the case of letters makes no difference
 * @param device     the audio device that it is for, or none in particular
 * @param output     of that device
 * @param calibrated the output was measured, not assumed
 * @param divider    as built; none until then
 * @param limits     that it is held to, with the reason if they are raised
 * @param notes      anything
 * @param created    when it was made
 * @param changed    when anything of it was last changed
 */
public record NamedRig(
        String name,
        Optional<DeviceIdentity> device,
        AudioOutput output,
        boolean calibrated,
        Optional<Divider> divider,
        Lead lead,
        CurrentLimits limits,
        String notes,
        Instant created,
        Instant changed) {

    private static final String NAME = "[A-Za-z0-9][A-Za-z0-9_-]{0,39}";

    public NamedRig {
        if (!name.matches(NAME)) {
            throw new Refused("\"" + name + "\" is no name for a rig",
                    "give 1 to 40 letters, digits, - and _, like bench-1");
        }
    }

    /** As a circuit; none until a divider is built. */
    public Optional<Rig> circuit() {
        return divider.map(built -> new Rig(output, built, lead));
    }

    public NamedRig withOutput(AudioOutput other, boolean measured) {
        return new NamedRig(name, device, other, measured, divider, lead, limits, notes, created, changed);
    }

    public NamedRig withDivider(Divider built, CurrentLimits heldTo) {
        return new NamedRig(name, device, output, calibrated, Optional.of(built), lead, heldTo, notes, created, changed);
    }

    public NamedRig changedAt(Instant when) {
        return new NamedRig(name, device, output, calibrated, divider, lead, limits, notes, created, when);
    }
}
