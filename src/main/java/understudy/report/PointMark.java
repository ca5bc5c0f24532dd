package understudy.report;

/** What is known of a point of a circuit: what the injections there say of the way from it to the module. */
public enum PointMark {
    /** The signal arrived. */
    GOOD("good", "[+]", "good: the signal arrived"),
    /** It did not. */
    BAD("bad", "[x]", "bad: it did not"),
    /** Now it did, now it did not. */
    BOTH("now good, now bad", "[!]", "now good, now bad"),
    /** Nobody injected there, or nothing was learned. */
    NOT_TESTED("not tested", "[ ]", "not tested, or undecided"),
    /** The rig can't be clipped on there. */
    CLOSED("no place to inject", " | ", "no place to inject");

    private final String words;
    private final String sign;
    private final String legend;

    PointMark(String words, String sign, String legend) {
        this.words = words;
        this.sign = sign;
        this.legend = legend;
    }

    public String words() {
        return words;
    }

    /** In three characters. */
    String sign() {
        return sign;
    }

    /** For who sees it the first time. */
    String legend() {
        return legend;
    }

    PointMark and(boolean good) {
        PointMark other = good ? GOOD : BAD;
        return this == NOT_TESTED || this == other ? other : BOTH;
    }
}
