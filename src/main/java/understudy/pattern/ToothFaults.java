package understudy.pattern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import understudy.text.Fields;

/** Faults of teeth and of their timing. */
final class ToothFaults {
    private ToothFaults() {}

    static Fault missing(FaultFields in, Fault.Place place) {
        List<Integer> teeth = teeth(in);
        if (in.wheel().isPresent() && teeth.size() >= in.wheel().get().teeth().size()) {
            in.fields().problem("tooth", "no tooth would be left", "leave one, or use \"fault: dropout\"");
        }
        return new Fault.MissingTooth(place, teeth);
    }

    static Fault weak(FaultFields in, Fault.Place place) {
        in.notOnHall("fault", "use \"missing tooth\" for a tooth that it does not see");
        List<Integer> teeth = teeth(in);
        return new Fault.WeakTooth(place, teeth, in.fields().quantity("strength", FormatLimits.STRENGTH) / 100);
    }

    static Fault displaced(FaultFields in, Fault.Place place) {
        List<Integer> teeth = teeth(in);
        double byDeg = in.fields().quantity("by", FormatLimits.PHASE);
        if (in.fields().clean()) {
            in.wheel().ifPresent(wheel -> clash(wheel, teeth, byDeg).ifPresent(number -> in.fields().problem("by",
                    "tooth " + number + " would run into the tooth beside it", "displace it by less")));
        }
        return new Fault.DisplacedTooth(place, teeth, byDeg);
    }

    /** The first tooth that would reach into the next or overtake it. */
    private static Optional<Integer> clash(Wheel wheel, List<Integer> displaced, double byDeg) {
        List<Tooth> teeth = new ArrayList<>();
        for (Tooth tooth : wheel.teeth()) {
            double moved = displaced.contains(tooth.number()) ? byDeg : 0;
            teeth.add(new Tooth(tooth.number(), tooth.leadingDeg() + moved, tooth.widthDeg()));
        }
        for (int i = 0; i < teeth.size(); i++) {
            boolean wraps = i + 1 == teeth.size();
            double nextDeg = teeth.get(wraps ? 0 : i + 1).leadingDeg() + (wraps ? wheel.overDeg() : 0);
            if (teeth.size() > 1 && teeth.get(i).trailingDeg() >= nextDeg) {
                int number = teeth.get(i).number();
                return Optional.of(displaced.contains(number) ? number : teeth.get(wraps ? 0 : i + 1).number());
            }
        }
        return Optional.empty();
    }

    static Fault runOut(FaultFields in, Fault.Place place) {
        Fields fields = in.fields();
        in.onlyOnWheel("fault");
        if (!fields.has("amplitude") && !fields.has("timing")) {
            fields.problem("fault", "the run-out has neither \"amplitude\" nor \"timing\"", "add one or both: "
                    + "\"amplitude: 20 %\", \"timing: 0.5 deg\"");
        }
        if (fields.has("amplitude")) {
            in.notOnHall("amplitude", "give it \"timing\" only");
        }
        double amplitude = fields.quantity("amplitude", FormatLimits.RUN_OUT, 0) / 100;
        double timingDeg = fields.quantity("timing", FormatLimits.TIMING, 0);
        return new Fault.RunOut(place, amplitude, timingDeg, SignalFaults.atDeg(in));
    }

    static Fault shift(FaultFields in, Fault.Place place) {
        Fields fields = in.fields();
        in.output().map(Output::signal).filter(s -> s instanceof Tone tone && tone.fixedFrequency())
                .ifPresent(s -> fields.problem("fault", "this makes no sense on \"" + in.output().get().name()
                        + "\", whose frequency has nothing to do with the turns", "give the tone \"cycles-per-turn\""));
        if (fields.oneOf("by", "teeth").orElse("").equals("teeth")) {
            in.onlyOnWheel("teeth");
            int teeth = fields.whole("teeth", -FormatLimits.MOST_POSITIONS, FormatLimits.MOST_POSITIONS);
            return new Fault.Shift(place, teeth * in.wheel().map(Wheel::pitchDeg).orElse(0.0));
        }
        return new Fault.Shift(place, fields.quantity("by", FormatLimits.PHASE, 0));
    }

    /** The numbers at "tooth", each of a tooth that the wheel has. */
    private static List<Integer> teeth(FaultFields in) {
        in.onlyOnWheel("fault");
        Optional<Node> node = in.fields().required("tooth", "5");
        List<Integer> numbers = node.map(n -> WheelReader.numbers(n, FormatLimits.MOST_POSITIONS, in.problems())).orElse(List.of());
        in.wheel().ifPresent(wheel -> {
            for (int i = 0; i < numbers.size(); i++) {
                int number = numbers.get(i);
                if (wheel.teeth().stream().noneMatch(tooth -> tooth.number() == number)) {
                    List<Node> items = node.get() instanceof SequenceNode list ? list.getValue() : List.of();
                    in.problems().add(i < items.size() ? items.get(i) : node.get(),
                            "the wheel of \"" + in.output().get().name() + "\" has no tooth " + number, has(wheel));
                }
            }
        });
        return numbers;
    }

    /** "it has teeth 1 to 16, 19 to 35". */
    private static String has(Wheel wheel) {
        List<Integer> numbers = wheel.teeth().stream().map(Tooth::number).sorted(Comparator.naturalOrder()).toList();
        StringBuilder runs = new StringBuilder();
        for (int i = 0; i < numbers.size(); i++) {
            int first = numbers.get(i);
            while (i + 1 < numbers.size() && numbers.get(i + 1) == numbers.get(i) + 1) {
                i++;
            }
            runs.append(runs.isEmpty() ? "" : ", ").append(first);
            if (numbers.get(i) > first) {
                runs.append(" to ").append(numbers.get(i));
            }
        }
        return "it has " + runs;
    }
}
