package understudy.trace;

import java.util.Locale;
import java.util.Optional;
import understudy.reading.Expected;

/**
 * What an injection says, and why.
 *
 * @param seen    what was displayed, or measured, and what is due
 * @param meaning what that says of the circuit, in a few words
 */
public record Judgement(Verdict verdict, String seen, String meaning) {

    /** Less than this part of the volts that should be at the clips is no weak signal, but a short circuit. */
    private static final double COLLAPSED = 0.5;
    /** A display that counts both edges, or every other, is off by two; so much off two is still that. */
    private static final double NEAR_TWO = 0.05;

    /** One sentence or more. */
    public String reason() {
        return seen + ": " + meaning;
    }

    public static Judgement of(Entry.Injected injected) {
        Optional<Double> clip = injected.clipPart();
        if (clip.isPresent() && clip.get() < COLLAPSED) {
            return new Judgement(Verdict.OPEN, "Only " + Math.round(100 * clip.get()) + " % of the volts are left at the clips",
                    "something draws the signal down, a short circuit or a wrong pin. This reading does not count. Unplug"
                    + " what you can on the sensor's side of the clips, so that only the module's side is fed, and inject again.");
        }
        return switch (injected.answer().kind()) {
            case VALUE -> value(injected.expected(), injected.answer().value());
            case NOTHING -> new Judgement(Verdict.BAD, "Nothing is displayed where " + wanted(injected.expected())
                    + " is due", "the signal does not arrive.");
            case ERRATIC -> new Judgement(Verdict.BAD, "The display is erratic where a steady " + wanted(injected.expected())
                    + " is due", "the signal is steady, so the way to the module is not.");
            case COMES_AND_GOES -> new Judgement(Verdict.BAD, "The display comes and goes when things are moved; the signal does"
                    + " not", "the bad place lies between here and the module.");
        };
    }

    private static Judgement value(Expected expected, double displayed) {
        String shown = words(expected, displayed);
        if (expected.holds(displayed)) {
            return new Judgement(Verdict.GOOD, shown + " is displayed, and " + wanted(expected)
                    + " is due", "the signal arrives.");
        }
        double ratio = displayed / expected.value();
        String meaning;
        if (displayed == 0) {
            meaning = "the signal does not arrive.";
        } else if (Math.abs(ratio - 2) < 2 * NEAR_TWO || Math.abs(ratio - 0.5) < 0.5 * NEAR_TWO) {
            meaning = "it is off by two: every other edge is lost, or each is counted twice. Look at the teeth and at the"
                    + " pulses that the circuit file states, too.";
        } else {
            meaning = String.format(Locale.ROOT, "it is %.0f %% %s, so pulses are %s on the way.", Math.abs(100 * (ratio - 1)),
                    ratio < 1 ? "low" : "high", ratio < 1 ? "lost" : "added");
        }
        return new Judgement(Verdict.BAD, shown + " is displayed where " + wanted(expected) + " is due", meaning);
    }

    private static String wanted(Expected expected) {
        return words(expected, expected.low()) + " to " + words(expected, expected.high());
    }

    private static String words(Expected expected, double shown) {
        return expected.unit().print(shown, expected.step());
    }
}
