package understudy.hunt;

import java.util.Optional;
import java.util.OptionalInt;
import understudy.trace.Answer;
import understudy.trace.Detail;

/** What a person can say while a hunt is led; {@link Aside} goes at every question. */
public sealed interface HuntInput {

    /** What was asked for is done, or go on. */
    record Done() implements HuntInput {}

    record Agreed(boolean yes) implements HuntInput {}

    /** Direct volts on the pin. */
    record PinVolts(double volts) implements HuntInput {}

    /**
     * The display shows this.
     *
     * @param note what was made of the words, to be shown; empty when nothing was
     */
    record Shown(Answer answer, String note) implements HuntInput {}

    /** A number so unlikely that it is asked for once more, with this question. */
    record Doubtful(Answer answer, String question) implements HuntInput {}

    /** From now on the signal plays at this part of its level; above 0, up to 1. */
    record Level(double part) implements HuntInput {}

    /** What a meter for alternating volts shows at the clips. */
    record ClipVolts(double volts) implements HuntInput {}

    /** What was moved when the display came and went: a suspect by its index; empty when nobody can say. */
    record Moved(Optional<Integer> suspect) implements HuntInput {}

    /** On without the proof of the method. */
    record WithoutProof() implements HuntInput {}

    /** A person's own words. */
    record Words(String words) implements HuntInput {}

    /** What must hold before a module is called bad does not hold. */
    record NotSo(String words) implements HuntInput {}

    /** The question is left for later, or was not tried. */
    record Later() implements HuntInput {}

    /** The signal ended before the display was read. */
    record SignalLost(String reason) implements HuntInput {}

    /** What a person can say whatever is asked. */
    sealed interface Aside extends HuntInput {}

    /** How does the hunt stand? */
    record Where() implements Aside {}

    /** Inject at another point, by its number from 1; empty: it is asked. */
    record Other(OptionalInt number) implements Aside {}

    /** The last reading does not count, and is read once more; an empty reason is asked for. */
    record Again(String reason) implements Aside {}

    /** A step does not count; without a number the last one, and an empty reason is asked for. */
    record Withdraw(OptionalInt number, String reason) implements Aside {}

    /** Keeps these words; empty: they are asked for. */
    record Note(String words) implements Aside {}

    /** Sets right what was written down of the job; empty words are asked for. */
    record Correct(Detail detail, String words) implements Aside {}

    /** Ends the job as it stands. */
    record Close() implements Aside {}

    /** Leaves; the job is kept. */
    record Leave() implements Aside {}
}
