package understudy.quantity;

import understudy.refusal.Refused;

/** Reads numbers that count something. */
public final class WholeNumber {

    private WholeNumber() {}

    /** A whole number from {@code from} to {@code to}, both allowed. */
    public static int read(String written, int from, int to) {
        try {
            int number = Integer.parseInt(written.strip());
            if (number >= from && number <= to) {
                return number;
            }
        } catch (NumberFormatException e) {
            // refused below, as a number out of range is
        }
        throw new Refused("\"" + written + "\" will not do", "give a whole number from " + from + " to " + to);
    }
}
