package understudy.pattern;

import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.Node;
import understudy.quantity.Quantity;
import understudy.refusal.Refused;
import understudy.text.Fields;
import understudy.text.Problems;
import understudy.text.Values;

/** Reads the speed of a pattern, and speeds elsewhere that must go with it. */
final class SpeedReader {
    private SpeedReader() {}

    static Optional<Speed> read(Node node, Problems problems) {
        Fields fields = new Fields(problems, node, "a speed", List.of("default", "from", "to", "rolls"));
        Quantity usual = speed(fields, "default", problems);
        Quantity from = speed(fields, "from", problems);
        Quantity to = speed(fields, "to", problems);
        double rolls = fields.quantity("rolls", FormatLimits.ROLLS, Double.NaN);
        if (usual == null || from == null || to == null) {
            return Optional.empty();
        }
        SpeedUnit unit = SpeedUnit.of(usual);
        sameUnit(fields, "from", from, unit);
        sameUnit(fields, "to", to, unit);
        if (unit.needsCircumference()) {
            fields.required("rolls", "2.1 m");
        } else {
            fields.refuse("a speed in " + unit.symbol(), "rolls");
        }
        if (!fields.clean()) {
            return Optional.empty();
        }
        if (to.value() == 0) {
            fields.problem("to", "the highest speed is 0", "write one above 0 " + unit.symbol());
        } else if (from.value() > to.value()) {
            fields.problem("from", "the lowest speed, " + from + ", is above the highest, " + to, "swap them");
        } else if (usual.value() < from.value() || usual.value() > to.value()) {
            fields.problem("default", "the default speed " + usual + " is out of the range",
                    "allowed are " + from + " to " + to);
        }
        return fields.clean() ? Optional.of(new Speed(unit, rolls, unit.toHz(usual.value(), rolls),
                unit.toHz(from.value(), rolls), unit.toHz(to.value(), rolls))) : Optional.empty();
    }

    private static Quantity speed(Fields fields, String key, Problems problems) {
        Optional<Node> node = fields.required(key, "800 rpm");
        Quantity[] read = new Quantity[1];
        node.ifPresent(n -> new Values(problems).quantity(n, "a speed like 800 rpm", written -> {
            Quantity speed = SpeedUnit.parse(written, true);
            double most = SpeedUnit.of(speed).most();
            if (!(speed.value() >= 0 && speed.value() <= most)) {
                throw new Refused(speed + " is out of range",
                        "allowed are 0 to " + new Quantity(most, speed.unit()));
            }
            read[0] = speed;
            return speed.value();
        }));
        return read[0];
    }

    private static void sameUnit(Fields fields, String key, Quantity speed, SpeedUnit unit) {
        if (speed.unit() != unit.unit()) {
            fields.problem(key, "this speed is in " + speed.unit().symbol() + ", the default in " + unit.symbol(),
                    "write all three in one unit");
        }
    }

    /** Turns per second of a speed within the pattern's range; NaN where it can't be told. */
    static double hz(Node node, Optional<Speed> speed, Problems problems) {
        return new Values(problems).quantity(node, example(speed),
                written -> speed.map(s -> s.parseHz(written)).orElseGet(() -> onlyChecked(written)));
    }

    /** The same for a speed that may lie outside the range, but must be above zero. */
    static double anyHz(Node node, Optional<Speed> speed, Problems problems) {
        return new Values(problems).quantity(node, example(speed), written -> {
            double hz = speed.map(s -> s.parseAnyHz(written)).orElseGet(() -> onlyChecked(written));
            if (hz <= 0) {
                throw new Refused("this speed must be above 0", "write " + example(speed));
            }
            return hz;
        });
    }

    private static String example(Optional<Speed> speed) {
        return "a speed like " + speed.map(s -> s.print(s.defaultHz() > 0 ? s.defaultHz() : s.toHz())).orElse("800 rpm");
    }

    private static double onlyChecked(String written) {
        SpeedUnit.parse(written, true);
        return Double.NaN;
    }
}
