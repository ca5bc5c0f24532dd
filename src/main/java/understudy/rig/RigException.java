package understudy.rig;

/**
 * Something about a rig, an input or a reading that can't be: what is wrong, and what would do. Remedy: mend the input,
 * or the parts.
 */
public final class RigException extends IllegalArgumentException {
    private final String wrong;
    private final String right;

    RigException(String wrong, String right) {
        super(wrong + "; " + right);
        this.wrong = wrong;
        this.right = right;
    }

    public String wrong() {
        return wrong;
    }

    public String right() {
        return right;
    }
}
