package understudy.trace;

import java.util.Optional;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.rig.Amounts;
import understudy.rig.Input;
import understudy.rig.PulledUpInput;
import understudy.rig.ReluctorInput;
import understudy.rig.Spread;

/**
 * What may lie on a circuit's pins before one clips on.
 *
 * @param allowed  against ground
 * @param dueVolts what a sound way to the module brings at least, if anything
 * @param why      where that comes from, to be put behind the numbers
 * @param twoPins  whether the signal has two pins; empty: not known
 */
public record PinLimits(Range allowed, Optional<Double> dueVolts, String why, Optional<Boolean> twoPins) {

    /** Beyond its supply or below ground by more than this an input's protection begins to conduct. */
    private static final double PROTECTION_VOLTS = 0.3;
    /** A supply of 5 V with its tolerance, and the protection: what an input of a kind unknown bears for sure. */
    private static final Range UNKNOWN = new Range(-0.3, 5.5, Unit.VOLT);
    /** No supply of sensors is below this while a battery is on the pin. */
    private static final double BATTERY_VOLTS = 9;

    public static PinLimits of(Circuit circuit, Optional<Input> input) {
        Optional<Boolean> twoPins = input.map(Input::differential);
        if (circuit.pinVolts().isPresent()) {
            return new PinLimits(circuit.pinVolts().get(), Optional.empty(), "as the circuit file says", twoPins);
        }
        Optional<Spread> held = input.flatMap(PinLimits::held);
        if (held.isPresent()) {
            double most = held.get().nominal() * (1 + held.get().tolerance());
            double least = held.get().nominal() * (1 - held.get().tolerance());
            Range allowed = new Range(Math.min(0, least) - PROTECTION_VOLTS, Math.max(0, most) + PROTECTION_VOLTS, Unit.VOLT);
            return new PinLimits(allowed, least > PROTECTION_VOLTS ? Optional.of(least - PROTECTION_VOLTS) : Optional.empty(),
                    most == 0 ? "this input holds its pin at ground" : "this input holds its pins at "
                            + Amounts.print(held.get(), Unit.VOLT), twoPins);
        }
        return new PinLimits(UNKNOWN, Optional.empty(), "what an input of which nothing more is known bears", twoPins);
    }

    /** The same, held to what the job allows. */
    public PinLimits within(Range other) {
        return new PinLimits(other, dueVolts, why, twoPins);
    }

    /** The volts at which an input holds its pins when nothing is connected. */
    private static Optional<Spread> held(Input input) {
        if (input instanceof PulledUpInput pulledUp) {
            return Optional.of(pulledUp.supplyVolts());
        }
        return input instanceof ReluctorInput reluctor ? Optional.of(reluctor.biasVolts()) : Optional.empty();
    }

    /** "-0.3 V to 0.3 V (this input holds its pin at ground)". */
    public String words() {
        return EventWords.volts(allowed.from()) + " to " + EventWords.volts(allowed.to()) + " (" + why + ")";
    }

    /** How to measure them. */
    public String how() {
        String where = "measure the direct volts from the pin to ground";
        return "With the rig not clipped on and the ignition on, " + twoPins.map(two -> two
                ? "measure the direct volts from each of the two pins to ground, and type the worse."
                : where + ".").orElse(where + "; if the signal has two pins, measure both and type the worse.");
    }

    /** What volts that are not allowed mean. */
    public String meaning(double volts) {
        if (volts < allowed.from()) {
            return "The pin lies below ground: the meter's leads are swapped, or the pin is a wrong one. Do not clip on.";
        }
        return volts >= BATTERY_VOLTS
                ? "That is the battery's voltage: a short to battery, or a wrong pin. Stop: do not clip on. Switch off, and find"
                        + " where the battery's voltage comes from; that may be the fault itself."
                : "Something feeds the pin: a short to a supply, a sensor that is still plugged in, or a wrong pin. Do not clip on."
                        + " Unplug the sensor, and find where the voltage comes from.";
    }

    /** What is to be said of volts that are allowed, yet too low. */
    public Optional<String> doubt(double volts) {
        return dueVolts.filter(due -> volts < due).map(due -> "So little is allowed, but at least "
                + EventWords.volts(due) + " is due from the module: the way to it may be broken, or lie on ground.");
    }
}
