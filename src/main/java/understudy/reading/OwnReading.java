package understudy.reading;

import java.util.Optional;
import java.util.OptionalDouble;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.SpeedUnit;

/** What a display shows if the module is made for just this pattern: the pattern's own speed. */
public final class OwnReading {

    private OwnReading() {}

    /** Empty where the output tells no speed, as knock bursts and outputs that stand still. */
    public static Optional<Reading> of(Pattern pattern, Output output) {
        OptionalDouble events = SignalFrequency.hz(output, 1);
        OptionalDouble twice = SignalFrequency.hz(output, 2);
        if (events.isEmpty() || events.getAsDouble() == 0) {
            return Optional.empty();
        }
        SpeedUnit spoken = pattern.speed().unit();
        boolean fixed = events.getAsDouble() == twice.getAsDouble();
        if (fixed || spoken == SpeedUnit.HZ) {
            return Optional.of(reading(Reading.Kind.FREQUENCY, DisplayUnit.HERTZ,
                    new Scale.Line(fixed ? 1 : 1 / events.getAsDouble(), 0)));
        }
        return Optional.of(spoken.needsCircumference()
                ? reading(Reading.Kind.WHEEL_SPEED, DisplayUnit.BY_SYMBOL.get(spoken.symbol()),
                        new Scale.Rolling(events.getAsDouble(), 1, pattern.speed().metresPerTurn()))
                : reading(Reading.Kind.ENGINE_SPEED, DisplayUnit.RPM, new Scale.EventsPerTurn(events.getAsDouble())));
    }

    private static Reading reading(Reading.Kind kind, DisplayUnit unit, Scale scale) {
        return new Reading(kind, unit, scale, Usual.tolerance(scale, unit), unit.usualStep());
    }
}
