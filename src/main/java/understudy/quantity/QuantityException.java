package understudy.quantity;

/** A number with a unit that can't be read: what is wrong, and what would be right. Remedy: mend the input. */
public final class QuantityException extends Refused {

    public QuantityException(String wrong, String right) {
        super(wrong, right);
    }
}
