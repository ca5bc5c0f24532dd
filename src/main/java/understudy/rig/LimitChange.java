package understudy.rig;

import java.util.Optional;
import java.util.OptionalDouble;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;

/**
 * A change of the current limits, as a person writes it: downwards freely, upwards only from what stands to what shall, with a
 * reason, which is recorded.
 *
 * @param normal   a lower limit for normal use
 * @param fault    a lower limit for a single fault
 * @param override a raised limit, "5 mA to 12 mA"
 * @param because  why that is right here
 */
public record LimitChange(Optional<String> normal, Optional<String> fault, Optional<String> override, Optional<String> because) {

    private static final Range AMPS = new Range(1e-6, 1, Unit.AMPERE);

    /** From what to what. */
    private record Raise(double fromAmps, double toAmps) {}

    /** The limits after it; {@code otherwise}, and said why, where it is wrong. */
    public CurrentLimits of(CurrentLimits otherwise, Refusals given) {
        double normalAmps = lowered(Control.LIMIT_NORMAL, normal, CurrentLimits.STANDARD.normalAmps(), otherwise.normalAmps(), given);
        double faultAmps = lowered(Control.LIMIT_FAULT, fault, CurrentLimits.STANDARD.faultAmps(), otherwise.faultAmps(), given);
        if (because.isPresent() && override.isEmpty()) {
            given.add(Control.BECAUSE, "there is nothing to give a reason for",
                    Remedy.of("add ").set(Control.OVERRIDE_LIMIT).then(", or leave it out"));
        } else if (override.isPresent() && because.filter(reason -> !reason.isBlank()).isEmpty()) {
            given.add(Control.OVERRIDE_LIMIT, "it needs a reason", Remedy.of("add ").set(Control.BECAUSE, "REASON")
                    .then(": why this module stands more than the limit, and how you know"));
            return otherwise;
        }
        Optional<Raise> raise = override.flatMap(written -> raise(written, given));
        double n = raise.filter(up -> up.fromAmps() == CurrentLimits.STANDARD.normalAmps()).map(Raise::toAmps).orElse(normalAmps);
        double f = raise.filter(up -> up.fromAmps() == CurrentLimits.STANDARD.faultAmps()).map(Raise::toAmps).orElse(faultAmps);
        return given.attempt(Location.of(Control.LIMIT_NORMAL), () -> new CurrentLimits(n, f, because.or(otherwise::override))).orElse(otherwise);
    }

    private static double lowered(Control control, Optional<String> written, double standard, double otherwise, Refusals given) {
        double amps = written.flatMap(text -> given.attempt(Location.of(control), () -> AMPS.typed(text))).orElse(otherwise);
        if (written.isPresent() && amps > standard) {
            given.add(control, Amounts.print(amps, Unit.AMPERE) + " is more than the standard " + Amounts.print(standard, Unit.AMPERE),
                    Remedy.of("a higher one takes ").set(Control.OVERRIDE_LIMIT).then(" and a reason"));
            return otherwise;
        }
        return amps;
    }

    private static Optional<Raise> raise(String override, Refusals given) {
        String[] ends = override.strip().split("\\s+to\\s+", 2);
        if (ends.length < 2) {
            given.add(Control.OVERRIDE_LIMIT, "\"" + override + "\" does not say from what to what",
                    "write \"1 mA to 2 mA\" for normal use, or \"5 mA to 12 mA\" for a fault");
            return Optional.empty();
        }
        OptionalDouble from = amps(ends[0], given);
        OptionalDouble to = amps(ends[1], given);
        if (from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        Raise raise = new Raise(from.getAsDouble(), to.getAsDouble());
        if (raise.fromAmps() != CurrentLimits.STANDARD.normalAmps() && raise.fromAmps() != CurrentLimits.STANDARD.faultAmps()) {
            given.add(Control.OVERRIDE_LIMIT, "no limit stands at " + Amounts.print(raise.fromAmps(), Unit.AMPERE),
                    "begin with the one that is raised: 1 mA for normal use, or 5 mA for a fault");
        } else if (raise.toAmps() <= raise.fromAmps()) {
            given.add(Control.OVERRIDE_LIMIT, Amounts.print(raise.toAmps(), Unit.AMPERE) + " is no higher than "
                    + Amounts.print(raise.fromAmps(), Unit.AMPERE),
                    Remedy.of("lower a limit with ").set(Control.LIMIT_NORMAL).then(" or ").set(Control.LIMIT_FAULT));
        }
        return Optional.of(raise);
    }

    private static OptionalDouble amps(String written, Refusals given) {
        return given.attempt(Location.of(Control.OVERRIDE_LIMIT), () -> AMPS.typed(written)).map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }
}
