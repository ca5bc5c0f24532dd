package understudy.rig;

import java.util.Locale;
import java.util.Optional;

/**
 * Kinds of input that are met, with the numbers that are usual for each where the module's own are not known, and the
 * kinds that no rig can serve.
 */
public enum InputKind {
    RELUCTOR_ADAPTIVE("reluctor, one pin, arming that follows the peaks", true,
            new ReluctorInput(false, new Spread(20e3, 0.2), Spread.exactly(0), new Spread(1e6, 0.2), 0,
                    series(18e3), new Arming.Adaptive(0.8, 0.075, 0.085),
                    ReluctorInput.Edge.FALLING, ReluctorInput.MOST_COIL_OHMS)),
    RELUCTOR_HYSTERESIS("reluctor, one pin, fixed thresholds 0.16 V either way", true,
            new ReluctorInput(false, new Spread(1e6, 0.2), Spread.exactly(0), new Spread(1e6, 0.2), 0,
                    series(15e3), new Arming.Hysteresis(-0.185, 0.185),
                    ReluctorInput.Edge.FALLING, 12e3)),
    RELUCTOR_BIASED_PAIR("reluctor, two pins held at half the supply", true,
            new ReluctorInput(true, new Spread(100e3, 0.2), new Spread(2.5, 0.05), new Spread(200e3, 0.2), 0,
                    series(50e3), new Arming.Adaptive(0.35, 0.25, 0.085),
                    ReluctorInput.Edge.FALLING, ReluctorInput.MOST_COIL_OHMS)),
    RELUCTOR_ADAPTIVE_PAIR("reluctor, two pins, arming that follows the peaks", false,
            new ReluctorInput(true, new Spread(20e3, 0.2), new Spread(1.65, 0.1), new Spread(100e3, 0.2), 0,
                    series(10e3), new Arming.Adaptive(0.35, 0.03, 0.085),
                    ReluctorInput.Edge.FALLING, ReluctorInput.MOST_COIL_OHMS)),
    PULLED_UP_5_V("Hall or switch, pulled up to 5 V", false,
            new PulledUpInput(new Spread(5, 0.05), new Spread(4.7e3, 0.05), 2.0, 3.8, FrontEnd.BARE)),
    RESISTIVE("a plain resistance, such as another instrument", false,
            new ResistiveInput(new Spread(1e6, 0.05), 0.1, FrontEnd.BARE)),
    PULLED_UP_8_TO_12_V(OutOfReach.PULLED_UP_8_TO_12_V),
    TWO_WIRE_CURRENT(OutOfReach.TWO_WIRE_CURRENT),
    DIRECT_VOLTAGE(OutOfReach.DIRECT_VOLTAGE),
    DIGITAL_PROTOCOL(OutOfReach.DIGITAL_PROTOCOL),
    RESOLVER(OutOfReach.RESOLVER);

    private final String words;
    private final boolean fromDatasheet;
    private final Optional<Input> usual;
    private final Optional<OutOfReach> outOfReach;

    InputKind(String words, boolean fromDatasheet, Input usual) {
        this.words = words;
        this.fromDatasheet = fromDatasheet;
        this.usual = Optional.of(usual);
        this.outOfReach = Optional.empty();
    }

    InputKind(OutOfReach outOfReach) {
        this.words = outOfReach.what();
        this.fromDatasheet = false;
        this.usual = Optional.empty();
        this.outOfReach = Optional.of(outOfReach);
    }

    private static FrontEnd series(double ohms) {
        return new FrontEnd(new Spread(ohms, 0.05), Optional.empty(), Optional.empty());
    }

    /** As it is typed: {@code reluctor-adaptive}. */
    public String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** For people. */
    public String words() {
        return words;
    }

    public boolean isOutOfReach() {
        return outOfReach.isPresent();
    }

    /** Where its numbers come from, as a sentence to be shown beside them. */
    public String source() {
        return fromDatasheet
                ? "Thresholds from the datasheet of an interface part of this kind; resistances usual in the trade, not "
                + "checked: compare with a known-good sensor."
                : "Usual in the trade, not checked: compare with a known-good sensor.";
    }

    /** The usual input of this kind, or a refusal with the reason. */
    public Input usual() {
        return usual.orElseThrow(() -> outOfReach.orElseThrow().refusal());
    }
}
