package understudy.trace;

import java.util.Optional;
import understudy.reading.Expected;
import understudy.reading.Judged;

/**
 * What an injection says, and why.
 *
 * @param seen    what was displayed, or measured, and what is expected
 * @param meaning what that says of the circuit: a few words, or a sentence or two
 */
public record Judgement(Verdict verdict, String seen, String meaning) {

    /** Less than this part of the volts that should be at the clips is no weak signal, but a short circuit. */
    private static final double COLLAPSED = 0.5;

    /** Both together: one sentence or more. */
    public String reason() {
        return seen + ": " + meaning;
    }

    public static Judgement of(Entry.Injected injected) {
        Optional<Double> clip = injected.clipPart();
        if (clip.isPresent() && clip.get() < COLLAPSED) {
            return new Judgement(Verdict.UNDECIDED, "Only " + Math.round(100 * clip.get()) + " % of the volts are left at the clips",
                    "something draws the signal down, a short circuit or a wrong pin. This reading does not count. Unplug"
                    + " what you can on the sensor's side of the clips, so that only the module's side is fed, and inject again.");
        }
        return switch (injected.answer().kind()) {
            case VALUE -> value(injected.expected(), injected.answer().value());
            case NOTHING -> new Judgement(Verdict.BAD, "Nothing is displayed; expected: " + injected.expected(),
                    "the signal does not arrive.");
            case ERRATIC -> new Judgement(Verdict.BAD, "The display is erratic; expected: " + injected.expected(),
                    "the signal is steady, so the way to the module is not.");
            case COMES_AND_GOES -> new Judgement(Verdict.BAD, "The display comes and goes when things are moved; the signal does"
                    + " not", "the bad place lies between here and the module.");
        };
    }

    private static Judgement value(Expected expected, double displayed) {
        Judged judged = Judged.of(displayed, expected);
        return switch (judged.sign()) {
            case AS_EXPECTED -> new Judgement(Verdict.GOOD, judged.numbers(), "the signal arrives.");
            case CANNOT_TELL -> new Judgement(Verdict.UNDECIDED, judged.numbers(), judged.meaning() + ".");
            default -> new Judgement(Verdict.BAD, judged.numbers(), judged.meaning() + ".");
        };
    }
}
