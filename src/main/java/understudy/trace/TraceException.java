package understudy.trace;

/** Something in a hunt that can't be done, or not yet: what is wrong, and what would do. Remedy: mend the input. */
public final class TraceException extends RuntimeException {
    private final String wrong;
    private final String right;

    public TraceException(String wrong, String right) {
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
