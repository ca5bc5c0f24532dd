package understudy.sweep;

import understudy.trace.Answer;

/** What a person can say while a sweep is going on. */
public sealed interface SweepInput {

    /**
     * The display shows this.
     *
     * @param note what was made of the words, to be shown; empty when nothing was
     */
    record Shown(Answer answer, String note) implements SweepInput {}

    /** A number so unlikely that it is asked for once more. */
    record Doubtful(Answer answer, String question) implements SweepInput {}

    /** To a doubt: it stands as it was typed, or not. */
    record Sure(boolean yes) implements SweepInput {}

    /** This speed is left out. */
    record Skip() implements SweepInput {}

    /** The last speed once more; what was typed there is forgotten. */
    record Back() implements SweepInput {}

    /** The sweep ends here. */
    record Stop() implements SweepInput {}
}
