package understudy.trace;

import java.util.Arrays;
import java.util.Optional;

/** What must hold before a module may be called bad: each alone makes a sound module look dead. */
public enum Proof {
    VOLTS("volts", "The signal's volts, measured at the module's own pins while it plays, are what they should be."),
    POLARITY("polarity", "Both ways round were tried, or the polarity is known to be right."),
    LEVEL("level", "The signal is at least twice the input's threshold there."),
    COMPANION("companion", "Signals that the module needs beside this one (crank and cam, the other wheels) were there, or"
            + " it needs none."),
    POWER("power", "The module's supplies were measured under load, at its own pins."),
    GROUNDS("grounds", "The module's grounds were measured under load, at its own pins, and drop less than 0.1 V.");

    private final String key;
    private final String demand;

    Proof(String key, String demand) {
        this.key = key;
        this.demand = demand;
    }

    /** How it is stored, and named in a sentence. */
    public String key() {
        return key;
    }

    /** What a person ticks: a sentence. */
    public String demand() {
        return demand;
    }

    static Optional<Proof> of(String key) {
        return Arrays.stream(values()).filter(proof -> proof.key.equals(key)).findFirst();
    }
}
