package understudy.preflight;

/** A signal that preflight has no answer for: what is wrong with it, and what would do. Remedy: mend the input. */
public final class CannotJudge extends IllegalArgumentException {
    private final String wrong;
    private final String right;

    CannotJudge(String wrong, String right) {
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
