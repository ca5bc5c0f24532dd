package understudy.refusal;

/**
 * One thing that can't be.
 *
 * @param location  where
 * @param wrong  what was given, or found, and why that can't be
 * @param remedy what is allowed, or what to do
 */
public record Refusal(Location location, String wrong, Remedy remedy) {

    public Refusal(Location location, String wrong, String right) {
        this(location, wrong, Remedy.of(right));
    }

    /** The same at {@code here}, unless it says where already. */
    public Refusal at(Location here) {
        return location.equals(Location.NOWHERE) ? new Refusal(here, wrong, remedy) : this;
    }

    Refusal followedBy(String consequence) {
        return new Refusal(location, wrong, remedy.parts().isEmpty() ? Remedy.of(consequence) : remedy.then("; " + consequence));
    }

    /** {@code location: what is wrong; what to do}. */
    public String text(Wording wording) {
        String where = wording.location(location);
        String right = remedy.text(wording);
        return (where.isEmpty() ? "" : where + ": ") + wrong + (right.isEmpty() ? "" : "; " + right);
    }

    /** What to do, in nobody's words. */
    public String right() {
        return remedy.text(Wording.NEUTRAL);
    }

    @Override
    public String toString() {
        return text(Wording.NEUTRAL);
    }
}
