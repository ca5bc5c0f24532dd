package understudy.trace;

/** What an injection says of the way from its point to the module. */
public enum Verdict {
    /** The signal arrives: that way is sound. */
    GOOD,
    /** It does not. */
    BAD,
    /** It says nothing, and does not count. */
    UNDECIDED
}
