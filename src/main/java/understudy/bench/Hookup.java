package understudy.bench;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Deed;
import understudy.refusal.Location;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;
import understudy.rig.Amounts;
import understudy.rig.Assessment;
import understudy.rig.Connection;
import understudy.rig.NamedInput;
import understudy.rig.Preferred;
import understudy.rig.Probe;
import understudy.rig.Rig;
import understudy.rig.Use;
import understudy.store.NamedRig;
import understudy.wave.DroopFree;
import understudy.wave.MeanVolts;
import understudy.wave.OutputFacts;

/** A rig of the user's, clipped on to an input: what a signal becomes between the program and the pins. */
public final class Hookup {

    private static final double MID_HZ = 1000;
    /** A fault can lengthen the pulses, but hardly beyond these: the clips never see more than full scale anyway. */
    private static final double LEAST_DUTY = 0.01;
    private static final double MOST_DUTY = 0.99;
    /** Below it a resting voltage is rounding. */
    private static final double LEAST_REST_VOLTS = 1e-6;

    private final NamedRig rig;
    private final Rig circuit;
    private final NamedInput input;
    private final Connection connection;
    private final Optional<Double> cornerHz;

    private Hookup(NamedRig rig, Rig circuit, NamedInput input) {
        this.rig = rig;
        this.circuit = circuit;
        this.input = input;
        this.connection = new Connection(circuit, input.input());
        this.cornerHz = DroopFree.cornerHz(connection);
    }

    /**
     * Empty when something about them is wrong.
     *
     * @param rig finds a rig by its name
     */
    public static Optional<Hookup> read(String rigName, String inputText, Function<String, NamedRig> rig, Refusals problems) {
        Optional<NamedInput> input = NamedInput.read(Location.of(Control.INPUT), inputText, problems);
        NamedRig named = rig.apply(rigName);
        if (named.circuit().isEmpty()) {
            problems.add(Control.RIG, named.name() + " has no divider yet",
                    Remedy.of("choose one with ").perform(Deed.CHOOSE_DIVIDER, named.name()).then(", then build it"));
        }
        return named.circuit().flatMap(circuit -> input.map(known -> new Hookup(named, circuit, known)));
    }

    /** The rig on that input; empty without a rig, and when something about them is wrong. */
    public static Optional<Hookup> maybe(Optional<String> rigName, Optional<String> inputText, Function<String, NamedRig> rig,
            Refusals problems) {
        if (rigName.isPresent() && inputText.isEmpty()) {
            problems.add(Control.RIG, "the volts at the pins depend on the input too", Remedy.of("add ").set(Control.INPUT, "KIND")
                    .then(", or name the input in the circuit file; ").perform(Deed.LIST_INPUTS, "").then(" lists the kinds"));
        }
        return rigName.isPresent() && inputText.isPresent() ? read(rigName.get(), inputText.get(), rig, problems) : Optional.empty();
    }

    public NamedRig rig() {
        return rig;
    }

    public Rig circuit() {
        return circuit;
    }

    public NamedInput input() {
        return input;
    }

    Connection connection() {
        return connection;
    }

    public boolean calibrated() {
        return rig.calibrated();
    }

    /** Volts at the pins, under load, for a sample of 1.0. */
    public double fullScaleVolts() {
        return connection.scale(MID_HZ, rig.calibrated()).fullScaleVolts();
    }

    /** Whether no direct voltage passes. */
    public boolean blocksDirectVolts() {
        return cornerHz.isPresent();
    }

    /** The most that an output asks for at the pins, to either side of rest, at level 1. */
    double peakVolts(Output output, OutputFacts facts) {
        double mean = blocksDirectVolts() ? MeanVolts.of(output) : 0; // what is blocked asks for nothing
        return Math.max(facts.highestVolts() - mean, mean - facts.lowestVolts());
    }

    /** Refuses to play these outputs through a rig that breaks its limits with any of them, every time anew. */
    void checkLimits(Pattern pattern, List<Output> played, Refusals problems) {
        double least = 0.5;
        double most = 0.5;
        List<OutputFacts> facts = OutputFacts.of(pattern);
        for (Output output : played) {
            OutputFacts fact = facts.get(pattern.outputs().indexOf(output));
            double swing = fact.highestVolts() - fact.lowestVolts();
            double duty = Math.max(LEAST_DUTY, Math.min(MOST_DUTY, (MeanVolts.of(output) - fact.lowestVolts()) / swing));
            least = Math.min(least, duty);
            most = Math.max(most, duty);
        }
        Use use = new Use(1, least, most);
        problems.attempt(Location.named("rig " + rig.name()), () -> {
            Assessment.of(circuit, input.input(), use).requireWithin(rig.limits(), Preferred.E24);
            return use;
        });
    }

    /** What the volts are worth, where the signal sits, and what is left of the droop; a line each. */
    String note() {
        String full = "rig " + rig.name() + " on " + input.kind().label()
                + ": volts are at the pins, under load; full scale is "
                + Amounts.print(fullScaleVolts(), Unit.VOLT) + " there" + (rig.calibrated() ? ""
                : "\nnot calibrated: full scale is taken for " + Amounts.print(circuit.output().fullScaleVolts(), Unit.VOLT)
                + " at the bare output");
        String where = cornerHz.map(corner -> "\nno direct voltage passes: the signal swings around the "
                + Amounts.print(restVolts(), Unit.VOLT) + " at which the "
                + (input.input().differential() ? "pins rest" : "pin rests")
                + "\ndroop below " + Amounts.print(corner, Unit.HERTZ) + " is undone, down to "
                + Amounts.print(DroopFree.cornerLeftHz(corner), Unit.HERTZ) + ", as far as full scale allows").orElse("");
        String raised = rig.limits().override().map(reason -> "\n" + rig.limits().words()).orElse("");
        return full + where + raised;
    }

    private double restVolts() {
        double volts = connection.restVolts(Probe.PINS);
        return Math.abs(volts) < LEAST_REST_VOLTS ? 0 : volts;
    }
}
