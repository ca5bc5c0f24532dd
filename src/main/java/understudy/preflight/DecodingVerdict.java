package understudy.preflight;

/** What becomes of the signal at the input. */
public enum DecodingVerdict {
    /** Every tooth is seen, and where there is a gap it is found: the input follows. */
    DECODED("decoded"),
    /**
     * As many teeth as there are, on the wrong sides of the teeth: what two swapped wires do. Speed reads; with a reluctor
     * no gap is found, with two levels each edge is off by a tooth.
     */
    SWAPPED("polarity swapped"),
    /** As many teeth as there are, but their distances fit neither way round. */
    OUT_OF_STEP("out of step"),
    /** Teeth are missed, or counted twice. */
    MISCOUNTED("miscounted"),
    /** The transformer's core would have to carry more than it can: what comes then is no copy of the signal. */
    SATURATED("core saturates"),
    /** The input's clamp cuts the ringing: how loud it is can't be told any more. */
    CUT("cut by the clamp"),
    /** Too little arrives: the input never switches. */
    SILENT("never switches");

    private final String words;

    DecodingVerdict(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
