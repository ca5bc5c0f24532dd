package understudy.view;

import java.util.stream.Collectors;
import understudy.quantity.NumberText;
import understudy.quantity.Unit;
import understudy.reading.DisplayTrait;
import understudy.reading.DisplayUnit;
import understudy.reading.Pair;

/** What is odd about a display, in one sentence or two: what is seen, and what it may mean. */
public final class FindingWords {

    private FindingWords() {}

    public static String of(DisplayTrait finding, DisplayUnit unit) {
        if (finding instanceof DisplayTrait.Stops stops) {
            return "from " + NumberText.of(stops.fromHz(), Unit.HERTZ) + " up the display "
                    + (stops.shown() == 0 ? "shows nothing" : "stays at " + unit.exactly(stops.shown()))
                    + ". Those numbers are left out. It is at its limit, or the signal no longer gets through so fast.";
        }
        if (finding instanceof DisplayTrait.Starts starts) {
            return "up to " + NumberText.of(starts.aboveHz(), Unit.HERTZ) + " the display shows nothing. Those numbers are left out. So slow"
                    + " the module shows nothing on purpose, or the signal is too weak there.";
        }
        if (finding instanceof DisplayTrait.CoarseSteps coarse) {
            return "the display counts in steps of " + unit.exactly(coarse.step()) + ".";
        }
        if (finding instanceof DisplayTrait.Lags lags) {
            return "the display shows " + unit.rounded(lags.shown(), 2) + " less after the frequency was raised than after it was lowered."
                    + " It averages: wait until it stands still before you read it.";
        }
        if (finding instanceof DisplayTrait.Outlier outlier) {
            return pair(outlier.pair(), unit) + " does not fit: it is " + unit.rounded(Math.abs(outlier.away()), 2) + " too "
                    + (outlier.away() > 0 ? "high" : "low") + " for the line of the others, and left out. Take it again.";
        }
        if (finding instanceof DisplayTrait.OneOfThese some) {
            return "one of these does not fit, and it is not known which: "
                    + some.pairs().stream().map(pair -> pair(pair, unit)).collect(Collectors.joining("; "))
                    + ". Take them again, and one more.";
        }
        return "the numbers waver by up to " + unit.rounded(((DisplayTrait.Wavers) finding).away(), 2)
                + " around the line, more than rounding does. Wait until the display stands still, and take more of them.";
    }

    private static String pair(Pair pair, DisplayUnit unit) {
        return unit.exactly(pair.shown()) + " at " + NumberText.of(pair.frequencyHz(), Unit.HERTZ);
    }
}
