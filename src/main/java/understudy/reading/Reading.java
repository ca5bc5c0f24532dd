package understudy.reading;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the module shows of a signal, as declared or learned; immutable.
 *
 * @param kind      what is shown
 * @param unit      of the display
 * @param scale     from events a second to the base unit of the display's dimension
 * @param tolerance of the module's value
 * @param step      by which the display counts, above 0, in the display's unit
 */
public record Reading(Kind kind, DisplayUnit unit, Scale scale, Tolerance tolerance, double step) {

    /** What can be shown, by the words of a file. */
    public enum Kind {
        WHEEL_SPEED("wheel speed"),
        VEHICLE_SPEED("vehicle speed"),
        ENGINE_SPEED("engine speed"),
        FREQUENCY("frequency"),
        TABLE("table"),
        LEARNED("learned");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public Reading {
        if (!(step > 0 && step < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a display counts in steps above 0, got " + step);
        }
    }

    /** What should be shown at so many events a second; empty where the scale says nothing, as beyond a table's ends. */
    public Optional<Expected> expected(double frequencyHz) {
        double value = unit.fromBase(scale.base(frequencyHz));
        if (!Double.isFinite(value)) {
            return Optional.empty();
        }
        double away = tolerance.at(value) + step / 2;
        return Optional.of(new Expected(value, value - away, value + away, step, unit));
    }

    /** Events a second that should show this, in the display's unit; empty where none do. */
    public OptionalDouble frequencyHz(double shown) {
        double hz = scale.frequencyHz(unit.toBase(shown));
        return Double.isFinite(hz) ? OptionalDouble.of(hz) : OptionalDouble.empty();
    }

    /** In the words of a file, on one line: what follows "reading:", braces included. */
    public String text() {
        return ReadingText.of(this);
    }
}
