package understudy.trace;

/** A way of hunting: where to inject, by what is known. */
interface Policy {

    /**
     * The point where to inject next.
     *
     * @param odds at which the hunt hasn't ended
     */
    int next(Odds odds);
}
