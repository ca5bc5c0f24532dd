package understudy.cli;

import java.util.List;
import java.util.Optional;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.quantity.Unit;
import understudy.rig.Assessment;
import understudy.rig.Connection;
import understudy.rig.Preferred;
import understudy.rig.Probe;
import understudy.rig.Rig;
import understudy.rig.Use;
import understudy.store.NamedRig;
import understudy.store.Store;
import understudy.wave.DroopFree;
import understudy.wave.MeanVolts;
import understudy.wave.OutputFacts;

/** A rig of the user's, clipped on to an input: what a signal becomes between the program and the pins. */
final class Bench {

    private static final double MID_HZ = 1000;

    private final NamedRig rig;
    private final Rig circuit;
    private final Inputs.Named input;
    private final Connection connection;
    private final Optional<Double> cornerHz;

    private Bench(NamedRig rig, Rig circuit, Inputs.Named input) {
        this.rig = rig;
        this.circuit = circuit;
        this.input = input;
        this.connection = new Connection(circuit, input.input());
        this.cornerHz = DroopFree.cornerHz(connection);
    }

    /** Empty when something about them is wrong. */
    static Optional<Bench> read(String rigName, String inputWords, Surroundings surroundings, Arguments given) {
        Optional<Inputs.Named> input = Inputs.read("--input", inputWords, given);
        NamedRig rig;
        try (Store store = surroundings.store()) {
            rig = store.rigs().find(rigName);
        }
        if (rig.circuit().isEmpty()) {
            given.problem("--rig", rig.name() + " has no divider yet", "choose one with 'understudy divider --rig " + rig.name()
                    + " --input KIND --save', then build it");
            return Optional.empty();
        }
        return input.map(known -> new Bench(rig, rig.circuit().orElseThrow(), known));
    }

    NamedRig rig() {
        return rig;
    }

    Rig circuit() {
        return circuit;
    }

    Inputs.Named input() {
        return input;
    }

    Connection connection() {
        return connection;
    }

    boolean calibrated() {
        return rig.calibrated();
    }

    /** Volts at the pins, under load, for a sample of 1.0. */
    double fullScaleVolts() {
        return connection.scale(MID_HZ, rig.calibrated()).fullScaleVolts();
    }

    /** Of a signal's mean, what does not pass. */
    double blocked(double meanVolts) {
        return cornerHz.isPresent() ? meanVolts : 0;
    }

    String aroundItsMean() {
        return cornerHz.isPresent() ? " to one side of its mean" : "";
    }

    String gives() {
        return "rig " + rig.name() + " gives at the pins of this input";
    }

    /** Refuses to play through a rig that breaks its limits, with any of these outputs, every time anew. */
    void checkLimits(Pattern pattern, List<Output> played, Arguments given) {
        double least = 0.5;
        double most = 0.5;
        List<OutputFacts> facts = OutputFacts.of(pattern);
        for (Output output : played) {
            OutputFacts fact = facts.get(pattern.outputs().indexOf(output));
            double swing = fact.highestVolts() - fact.lowestVolts();
            // a fault can lengthen the pulses, but hardly beyond this: the clips never see more than full scale anyway
            double duty = Math.max(0.01, Math.min(0.99, (MeanVolts.of(output) - fact.lowestVolts()) / swing));
            least = Math.min(least, duty);
            most = Math.max(most, duty);
        }
        Use use = new Use(1, least, most);
        given.attempt("rig " + rig.name(), () -> {
            Assessment.of(circuit, input.input(), use).requireWithin(rig.limits(), Preferred.E24);
            return use;
        });
    }

    /** What the volts are worth, where the signal sits, and what is left of the droop. */
    String note() {
        String full = "rig " + rig.name() + " on " + Inputs.name(input.kind()) + ": volts are at the pins, under load; full scale is "
                + Amounts.print(fullScaleVolts(), Unit.VOLT) + " there" + (rig.calibrated() ? ""
                : "\nnot calibrated: full scale is taken for " + Amounts.print(circuit.output().fullScaleVolts(), Unit.VOLT)
                + " at the bare output");
        String where = cornerHz.map(corner -> "\nno direct voltage passes: the signal swings around the "
                + Amounts.print(rest(), Unit.VOLT) + " at which the " + (input.input().differential() ? "pins rest" : "pin rests")
                + "\ndroop below " + Amounts.print(corner, Unit.HERTZ) + " is undone, down to "
                + Amounts.print(DroopFree.cornerLeftHz(corner), Unit.HERTZ) + ", as far as full scale allows").orElse("");
        String raised = rig.limits().override().map(reason -> "\n" + LimitOptions.words(rig.limits())).orElse("");
        return full + where + raised;
    }

    private double rest() {
        double volts = connection.restVolts(Probe.PINS);
        return Math.abs(volts) < 1e-6 ? 0 : volts;
    }
}
