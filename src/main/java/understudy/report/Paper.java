package understudy.report;

/** The sheet that a report is printed on. */
public enum Paper {
    /** ISO 216: 210 mm by 297 mm. */
    A4("A4"),
    /** ANSI/ASME Y14.1 size A: 8.5 in by 11 in. */
    LETTER("Letter");

    private final String word;

    Paper(String word) {
        this.word = word;
    }

    /** As people write it, and CSS reads it. */
    public String word() {
        return word;
    }
}
