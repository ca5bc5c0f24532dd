package understudy.preflight;

import understudy.quantity.Refused;

/** A signal that preflight has no answer for: what is wrong with it, and what would do. Remedy: mend the input. */
public final class CannotJudge extends Refused {

    CannotJudge(String wrong, String right) {
        super(wrong, right);
    }
}
