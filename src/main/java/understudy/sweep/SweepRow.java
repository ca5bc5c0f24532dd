package understudy.sweep;

import java.time.Instant;
import java.util.Optional;
import understudy.quantity.Dimension;
import understudy.reading.Expected;
import understudy.reading.Judged;
import understudy.reading.Pair;
import understudy.trace.Answer;

/**
 * What was read at one stop of a sweep.
 *
 * @param at          when it was typed
 * @param speedHz     turns a second of the pattern's speed
 * @param frequencyHz events a second, as the module counts them
 * @param seen        on the display; empty: skipped
 */
public record SweepRow(Instant at, double speedHz, double frequencyHz, Expected expected, Optional<Answer> seen) {

    public static final String SKIPPED = "skipped";

    /** The number that is shown, or 0 where nothing is; empty where there is no number. */
    public Optional<Double> shown() {
        boolean zeroIsNothing = expected.unit().dimension() != Dimension.PRESSURE;
        return seen.flatMap(answer -> switch (answer.kind()) {
            case VALUE -> Optional.of(answer.value());
            case NOTHING -> zeroIsNothing ? Optional.of(0.0) : Optional.<Double>empty();
            default -> Optional.<Double>empty();
        });
    }

    public Optional<Pair> pair() {
        return shown().map(shown -> new Pair(frequencyHz, shown));
    }

    private Optional<Judged> judged() {
        return shown().map(shown -> Judged.of(shown, expected));
    }

    /** Whether it says that the module reads right or wrong here. */
    public boolean tells() {
        return seen.isPresent() && judged().filter(judged -> judged.sign() == Judged.Sign.CANNOT_TELL).isEmpty();
    }

    public boolean right() {
        return judged().filter(Judged::good).isPresent();
    }

    /** In a word or two, for a table. */
    public String verdict() {
        if (judged().isPresent()) {
            return switch (judged().get().sign()) {
                case AS_EXPECTED -> "right";
                case CANNOT_TELL -> "unclear";
                case NOTHING -> "nothing";
                case TWICE -> "twice";
                case HALF -> "half";
                case TOO_HIGH -> "too high";
                case TOO_LOW -> "too low";
            };
        }
        return seen.map(answer -> answer.kind().words()).orElse(SKIPPED);
    }

    /** In a sentence. */
    public String reason() {
        return judged().map(Judged::reason).orElseGet(() -> seen.isEmpty() ? SKIPPED
                : "the display is " + verdict() + "; expected: " + expected);
    }

    /** Displayed less expected, in the display's unit. */
    public Optional<Double> deviation() {
        return shown().map(shown -> shown - expected.value());
    }

    /** The same in percent of what is expected; empty also where that is 0. */
    public Optional<Double> deviationPercent() {
        return deviation().filter(away -> expected.value() != 0).map(away -> 100 * away / Math.abs(expected.value()));
    }
}
