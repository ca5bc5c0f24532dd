package understudy.quantity;

/** A number with a unit that can't be read: what is wrong, and what would be right. Remedy: mend the input. */
public final class QuantityException extends IllegalArgumentException {
    private final String wrong;
    private final String right;

    public QuantityException(String wrong, String right) {
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
