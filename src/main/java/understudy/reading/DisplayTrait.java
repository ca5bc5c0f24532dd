package understudy.reading;

import java.util.List;

/** What a series of displayed numbers shows of the display besides its scale; numbers in its unit. */
public sealed interface DisplayTrait {

    /** From this frequency up it shows the same, whatever is injected; 0 where it shows nothing. */
    record Stops(double fromHz, double shown) implements DisplayTrait {}

    /** Up to this frequency it shows nothing where the line would show something. */
    record Starts(double aboveHz) implements DisplayTrait {}

    /** It counts by more than was told, or than the numbers are written with. */
    record CoarseSteps(double step) implements DisplayTrait {}

    /** It shows so much less when the frequency was raised than when it was lowered: it averages; wait longer. */
    record Lags(double shown) implements DisplayTrait {}

    /** One pair that the line of the others does not pass; {@code away} is signed, in the display's unit. */
    record Outlier(Pair pair, double away) implements DisplayTrait {}

    /** One of these does not fit, and the pairs are too few to tell which. */
    record OneOfThese(List<Pair> pairs) implements DisplayTrait {
        public OneOfThese {
            pairs = List.copyOf(pairs);
        }
    }

    /** The numbers waver around the line by so much at most, which is more than rounding. */
    record Wavers(double away) implements DisplayTrait {}
}
