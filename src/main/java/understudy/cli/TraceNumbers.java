package understudy.cli;

import java.util.Optional;
import understudy.refusal.Refused;
import understudy.quantity.Range;
import understudy.quantity.Unit;

/** Numbers off a meter, as they are typed; asked for until they are one. */
final class TraceNumbers {

    /** More than any meter at a sensor's pin shows. */
    private static final Range DIRECT = new Range(-1000, 1000, Unit.VOLT);

    private TraceNumbers() {}

    static double volts(TraceTalk talk, TraceDesk desk, String question) {
        while (true) {
            Optional<Double> volts = read(talk, desk.ask(question), "V", DIRECT);
            if (volts.isPresent()) {
                return volts.get();
            }
        }
    }

    /** A number alone is in the unit; empty, and said why, when it is none. */
    static Optional<Double> read(TraceTalk talk, String line, String unit, Range range) {
        try {
            return Optional.of(range.parse(line.matches("[-+]?[0-9.]+") ? line + " " + unit : line));
        } catch (Refused e) {
            talk.say((line.isEmpty() ? "A number is needed here" : e.wrong()) + "; " + e.right() + ". Type ? for what else goes.");
            return Optional.empty();
        }
    }
}
