package understudy.cli;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.text.Nearest;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.rig.Arming;
import understudy.rig.FrontEnd;
import understudy.rig.Input;
import understudy.rig.InputKind;
import understudy.rig.PulledUpInput;
import understudy.rig.ReluctorInput;
import understudy.rig.ResistiveInput;

/** Input circuits as they are written on the command line: a kind by name, with what is known to be different about it. */
final class Inputs {

    static final String HELP = "The module's input: a kind that 'understudy input' lists, like reluctor-adaptive, with what you"
            + " know of it, like \"pulled-up-5-v, pull-up: 10k 5%%, low: 1.5 V\".";

    private static final Range OHMS = new Range(1, 100e6, Unit.OHM);
    private static final Range VOLTS = new Range(-60, 60, Unit.VOLT);
    private static final Range ABOVE_ZERO = new Range(0.001, 60, Unit.VOLT);
    private static final Range FARADS = new Range(1e-12, 1e-3, Unit.FARAD);

    private Inputs() {}

    /** {@code reluctor-adaptive}. */
    static String name(InputKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** An input with the kind that it is one of. */
    record Named(InputKind kind, Input input) {}

    /** Empty when it is wrong, or out of any rig's reach. */
    static Optional<Named> read(String option, String written, Arguments given) {
        Description description = Description.read(option, written, given);
        Optional<InputKind> kind = Arrays.stream(InputKind.values()).filter(one -> name(one).equals(description.what())).findFirst();
        if (kind.isEmpty()) {
            List<String> names = Arrays.stream(InputKind.values()).map(Inputs::name).toList();
            List<String> near = Nearest.to(description.what(), names);
            given.problem(option, "\"" + description.what() + "\" is no kind of input", near.isEmpty()
                    ? "the kinds are " + String.join(", ", names)
                    : "did you mean " + near.stream().limit(2).collect(Collectors.joining(" or ")) + "?");
            return Optional.empty();
        }
        Optional<Input> input = given.attempt(option, kind.get()::usual).flatMap(usual ->
                given.attempt(option, () -> with(description, usual)));
        input.ifPresent(whatever -> description.end());
        return input.map(known -> new Named(kind.get(), known));
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
    static String words(Input input) {
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
