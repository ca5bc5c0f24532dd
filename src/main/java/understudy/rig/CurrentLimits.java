package understudy.rig;

import java.util.Optional;
import understudy.quantity.Unit;
import understudy.refusal.Refused;

/**
 * What current the tool allows through a clip.
 *
 * @param normalAmps what the rig's own source may drive in normal use
 * @param faultAmps  what may flow in any single fault, all of it
 * @param override   why these are higher than {@link #STANDARD}, to be recorded; none when they are not
 */
public record CurrentLimits(double normalAmps, double faultAmps, Optional<String> override) {
    public static final CurrentLimits STANDARD = new CurrentLimits(1e-3, 5e-3, Optional.empty());

    public CurrentLimits {
        if (!(normalAmps > 0 && faultAmps >= normalAmps && faultAmps <= 1)) {
            throw new Refused("the limits are given as " + Bounds.print(normalAmps, Unit.AMPERE) + " in normal use and "
                    + Bounds.print(faultAmps, Unit.AMPERE) + " in a fault",
                    "both must be above 0 A, the one for faults no lower than the other and at most 1 A");
        }
        boolean raised = normalAmps > 1e-3 || faultAmps > 5e-3;
        if (raised && override.filter(reason -> !reason.isBlank()).isEmpty()) {
            throw new Refused("limits of " + Bounds.print(normalAmps, Unit.AMPERE) + " and "
                    + Bounds.print(faultAmps, Unit.AMPERE) + " are higher than the standard 1 mA and 5 mA",
                    "lower them, or give the reason for the override, which is recorded with the rig");
        }
        override = raised ? override.map(String::strip) : Optional.empty();
    }

    /** Stricter than standard. */
    public static CurrentLimits lowered(double normalAmps, double faultAmps) {
        return new CurrentLimits(normalAmps, faultAmps, Optional.empty());
    }

    /** Amperes allowed in that state. */
    public double of(State state) {
        return state.isFault() ? faultAmps : normalAmps;
    }

    /** "1 mA in normal use, 5 mA in any single fault", and why that is more than the standard, if it is. */
    public String words() {
        return Amounts.print(normalAmps, Unit.AMPERE) + " in normal use, " + Amounts.print(faultAmps, Unit.AMPERE)
                + " in any single fault"
                + override.map(reason -> "; raised above the standard 1 mA and 5 mA because: " + reason).orElse("");
    }
}
