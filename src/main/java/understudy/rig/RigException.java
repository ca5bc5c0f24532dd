package understudy.rig;

import understudy.quantity.Refused;

/**
 * Something about a rig, an input or a reading that can't be: what is wrong, and what would do. Remedy: mend the input,
 * or the parts.
 */
public final class RigException extends Refused {

    RigException(String wrong, String right) {
        super(wrong, right);
    }
}
