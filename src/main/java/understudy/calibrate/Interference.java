package understudy.calibrate;

import understudy.refusal.Remedy;
/**
 * Something on the way that alters the signal, so that the output can't be trusted to play what it is given.
 *
 * @param kind   what it is
 * @param seen   what was seen, and what is allowed
 * @param remedy what to do
 */
public record Interference(Kind kind, String seen, Remedy remedy) {

    /** What may stand in the way. */
    public enum Kind {
        /** The samples were computed anew for another rate, or packed with loss. */
        RESAMPLED,
        /** Some frequencies are raised or lowered. */
        EQUALISED,
        /** Loud parts are turned down, cut off, or the level moves by itself. */
        LIMITED,
        /** The mains is to be heard where silence was played. */
        HUM,
        /** There is other sound where silence was played. */
        MIXED,
        /** Samples went missing while it played or was recorded. */
        INTERRUPTED
    }
}
