package understudy.rig;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refusals;
import understudy.text.Nearest;

/**
 * An input with the kind that it is one of, as a text says it: a kind by its label, then what is known to be different
 * about it, "pulled-up-5-v, pull-up: 10k 5%, low: 1.5 V".
 */
public record NamedInput(InputKind kind, Input input) {

    private static final Range OHMS = new Range(1, 100e6, Unit.OHM);
    private static final Range VOLTS = new Range(-60, 60, Unit.VOLT);
    private static final Range ABOVE_ZERO = new Range(0.001, 60, Unit.VOLT);
    private static final Range FARADS = new Range(1e-12, 1e-3, Unit.FARAD);
    /** What the trade calls a reluctor; labels here are more exact. */
    private static final List<String> RELUCTOR_WORDS = List.of("vr", "reluctor", "inductive", "magnetic", "variable-reluctance", "coil");

    /**
     * Empty when it is wrong, or out of any rig's reach.
     *
     * @param location where the text was given, for the problems found in it
     */
    public static Optional<NamedInput> read(Location location, String written, Refusals problems) {
        Description description = Description.read(location, written, problems);
        Optional<InputKind> kind =
                Arrays.stream(InputKind.values()).filter(one -> one.label().equals(description.what())).findFirst();
        if (kind.isEmpty()) {
            problems.add(new Refusal(location, "\"" + description.what() + "\" is no kind of input", advice(description.what())));
            return Optional.empty();
        }
        Optional<Input> input = problems.attempt(location, kind.get()::usual).flatMap(usual ->
                problems.attempt(location, () -> with(description, usual)));
        input.ifPresent(whatever -> description.end());
        return input.map(known -> new NamedInput(kind.get(), known));
    }

    private static String advice(String what) {
        List<String> labels = Arrays.stream(InputKind.values()).map(InputKind::label).toList();
        if (RELUCTOR_WORDS.contains(what.toLowerCase(Locale.ROOT))) {
            return "a reluctor's input is one of " + labels.stream().filter(label -> label.startsWith("reluctor"))
                    .collect(Collectors.joining(", "));
        }
        List<String> near = Nearest.to(what, labels);
        return near.isEmpty() ? "the kinds are " + String.join(", ", labels)
                : "did you mean " + near.stream().limit(2).collect(Collectors.joining(" or ")) + "?";
    }

    private static Input with(Description d, Input usual) {
        if (usual instanceof PulledUpInput pulledUp) {
            return new PulledUpInput(
                    d.part("supply", new Range(0.5, 60, Unit.VOLT), pulledUp.supplyVolts()),
                    d.part("pull-up", OHMS, pulledUp.pullUpOhms()),
                    d.number("low", ABOVE_ZERO, pulledUp.lowBelowVolts()),
                    d.number("high", ABOVE_ZERO, pulledUp.highAboveVolts()),
                    frontEnd(d, pulledUp.frontEnd()));
        } else if (usual instanceof ReluctorInput reluctor) {
            return new ReluctorInput(reluctor.differential(),
                    d.part("resistance", OHMS, reluctor.inputOhms()),
                    d.part("bias", VOLTS, reluctor.biasVolts()),
                    d.part("bias-resistance", OHMS, reluctor.biasOhms()),
                    reluctor.referenceVolts(),
                    frontEnd(d, reluctor.frontEnd()),
                    arming(d, reluctor.arming()),
                    reluctor.timing(),
                    d.number("largest-coil", OHMS, reluctor.mostSensorOhms()));
        }
        ResistiveInput resistive = (ResistiveInput) usual;
        return new ResistiveInput(d.part("resistance", OHMS, resistive.inputOhms()),
                d.number("needs", ABOVE_ZERO, resistive.leastPeakVolts()), frontEnd(d, resistive.frontEnd()));
    }

    private static Arming arming(Description d, Arming usual) {
        double threshold = d.number("threshold", ABOVE_ZERO, usual.leastPeakVolts());
        if (usual instanceof Arming.Adaptive adaptive) {
            return new Arming.Adaptive(adaptive.part(), threshold, adaptive.decaySeconds());
        }
        return new Arming.Hysteresis(-threshold, threshold);
    }

    private static FrontEnd frontEnd(Description d, FrontEnd usual) {
        return new FrontEnd(d.part("series", OHMS, usual.seriesOhms()), d.part("filter", FARADS, usual.filterFarads()),
                usual.clamp());
    }

    /** What it is taken for, in one line. */
    public String words() {
        return words(input);
    }

    /** What an input is taken for, in one line. */
    public static String words(Input input) {
        if (input instanceof PulledUpInput pulledUp) {
            return "pulled up to " + Amounts.print(pulledUp.supplyVolts(), Unit.VOLT) + " through "
                    + Amounts.print(pulledUp.pullUpOhms(), Unit.OHM) + "; low below "
                    + Amounts.print(pulledUp.lowBelowVolts(), Unit.VOLT) + ", high above "
                    + Amounts.print(pulledUp.highAboveVolts(), Unit.VOLT);
        } else if (input instanceof ReluctorInput reluctor) {
            String bias = reluctor.biasVolts().nominal() == 0 ? "" : ", held at " + Amounts.print(reluctor.biasVolts(), Unit.VOLT);
            return Amounts.print(reluctor.inputOhms(), Unit.OHM) + (reluctor.differential() ? " between two pins" : " to ground")
                    + bias + "; needs " + Amounts.print(reluctor.arming().leastPeakVolts(), Unit.VOLT)
                    + " either way at least; takes a sensor above " + Amounts.print(reluctor.mostSensorOhms(), Unit.OHM)
                    + " for open";
        }
        ResistiveInput resistive = (ResistiveInput) input;
        return Amounts.print(resistive.inputOhms(), Unit.OHM) + " to ground; needs "
                + Amounts.print(resistive.leastPeakVolts(), Unit.VOLT) + " either way";
    }
}
