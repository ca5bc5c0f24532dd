package understudy.quantity;

/** What somebody gave can't be: what is wrong with it, and what would do. Remedy: mend the input. */
public abstract class Refused extends IllegalArgumentException {
    private final String wrong;
    private final String right;

    protected Refused(String wrong, String right) {
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
