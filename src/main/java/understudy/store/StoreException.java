package understudy.store;

/** The store can't do what was asked: what is wrong, and what to do. Nothing that was kept is lost by it. */
public final class StoreException extends RuntimeException {

    /** What the user can do about it. */
    public enum Remedy {
        /** Another name is needed. */
        MEND_INPUT,
        /** The machine has to be put right: a full disk, a missing permission, a file of a newer version. */
        MEND_SETUP,
        /** Another process was quicker. */
        TRY_AGAIN
    }

    private final Remedy remedy;

    private StoreException(Remedy remedy, String message, Throwable cause) {
        super(message, cause);
        this.remedy = remedy;
    }

    public Remedy remedy() {
        return remedy;
    }

    static StoreException input(String message) {
        return new StoreException(Remedy.MEND_INPUT, message, null);
    }

    static StoreException setup(String message, Throwable cause) {
        return new StoreException(Remedy.MEND_SETUP, message, cause);
    }

    static StoreException again(String message) {
        return new StoreException(Remedy.TRY_AGAIN, message, null);
    }
}
