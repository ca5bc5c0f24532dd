package understudy.trace;

import understudy.quantity.Refused;

/** Something in a hunt that can't be done, or not yet: what is wrong, and what would do. Remedy: mend the input. */
public final class TraceException extends Refused {

    public TraceException(String wrong, String right) {
        super(wrong, right);
    }
}
