package understudy.reading;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * A straight line through pairs of injected frequency and displayed number, {@code shown = offset + perHz * frequency},
 * with limits that hold the truth at least 19 times out of 20.
 *
 * <p>Where one line can pass every pair within half a step, rounding explains all that is seen, and the limits enclose
 * every line that can: a display that does nothing but round can't lie outside them. Where none can, the display wavers
 * by more than its rounding: then it is least squares with Student's t (Draper and Smith, Applied Regression Analysis,
 * 3rd edition 1998, 1.4), and a scatter of no less than rounding alone would make. Where it lags, what it lags by counts as
 * rounding does.
 *
 * @param perHz       slope, in the display's unit for each event a second
 * @param offset      shown at 0 Hz, in the display's unit
 * @param throughZero the slope if the module computes in proportion, and its display rounds or cuts off; empty where the pairs
 *                    rule that out
 * @param fromHz      lowest frequency fitted
 * @param toHz        highest
 * @param away        how far, between these two, the truth may lie from {@link #shown}, in the display's unit
 * @param basis       what the limits rest on
 */
public record ScaleFit(
        Estimate perHz, Estimate offset, Optional<Estimate> throughZero, double fromHz, double toHz, double away, Basis basis) {

    /** What limits rest on: that the display only rounds; that it lags by no more than was seen; or the scatter that was seen. */
    public enum Basis { ROUNDING, LAG, SCATTER }

    /** 19 of 20, half of the rest on either side. */
    private static final double UPPER = 0.975;

    /**
     * @param pairs two or more, at two or more different frequencies
     * @param step  of the display, above 0
     */
    public static ScaleFit of(List<Pair> pairs, double step) {
        if (pairs.stream().mapToDouble(Pair::frequencyHz).distinct().count() < 2) {
            throw new IllegalArgumentException("a line needs two different frequencies");
        }
        return Lines.within(step / 2, pairs).map(lines -> of(lines, pairs, step, Basis.ROUNDING)).orElseGet(() -> scattered(pairs, step));
    }

    /**
     * Where rising readings lag behind falling ones.
     *
     * @param lag between the two; the truth is taken to lie between, give or take rounding
     */
    static ScaleFit lagging(List<Pair> pairs, double lag, double step) {
        double wide = lag + 2 * step; // a whole step either side, since the lag itself is known to about one
        return Lines.within(wide / 2, pairs).map(lines -> of(lines, pairs, wide, Basis.LAG)).orElseGet(() -> scattered(pairs, step));
    }

    private static ScaleFit of(Lines lines, List<Pair> pairs, double step, Basis basis) {
        double fromHz = fromHz(pairs);
        double toHz = toHz(pairs);
        Optional<Estimate> throughZero = roundedThroughZero(pairs, step);
        // the distance between two lines is greatest at an end
        double away = Math.max(away(lines.at(fromHz), throughZero, fromHz), away(lines.at(toHz), throughZero, toHz));
        return new ScaleFit(lines.slope(), lines.at(0), throughZero, fromHz, toHz, away, basis);
    }

    private static double away(Estimate limits, Optional<Estimate> throughZero, double frequencyHz) {
        double shown = throughZero.map(zero -> zero.value() * frequencyHz).orElse(limits.value());
        return Math.max(limits.high() - shown, shown - limits.low());
    }

    /**
     * Of a display that rounds or cuts off: without an offset to take it up, half a step too low everywhere would else pass
     * for a smaller slope. The likeliest is one that rounds, if any does.
     */
    private static Optional<Estimate> roundedThroughZero(List<Pair> pairs, double step) {
        return slopes(pairs, step / 2, step).map(either -> {
            double likeliest = slopes(pairs, step / 2, step / 2).orElse(either).value();
            return new Estimate(either.low(), likeliest, either.high());
        });
    }

    /** All slopes through zero that give values which lie at most so far {@code nearer} to zero than shown, or {@code further} from it. */
    private static Optional<Estimate> slopes(List<Pair> pairs, double nearer, double further) {
        double low = Double.NEGATIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        for (Pair pair : pairs) {
            double least = pair.shown() - (pair.shown() > 0 ? nearer : further);
            double most = pair.shown() + (pair.shown() < 0 ? nearer : further);
            if (pair.frequencyHz() > 0) {
                low = Math.max(low, least / pair.frequencyHz());
                high = Math.min(high, most / pair.frequencyHz());
            } else if (least > 0 || most < 0) {
                return Optional.empty();
            }
        }
        return low <= high ? Optional.of(new Estimate(low, (low + high) / 2, high)) : Optional.empty();
    }

    /** By least squares, three pairs or more; with {@code step} as what rounding adds at least. */
    static ScaleFit scattered(List<Pair> pairs, double step) {
        int count = pairs.size();
        double meanHz = pairs.stream().mapToDouble(Pair::frequencyHz).average().orElseThrow();
        double meanShown = pairs.stream().mapToDouble(Pair::shown).average().orElseThrow();
        double squares = pairs.stream().mapToDouble(pair -> sq(pair.frequencyHz() - meanHz)).sum();
        double perHz = pairs.stream()
                .mapToDouble(pair -> (pair.frequencyHz() - meanHz) * (pair.shown() - meanShown)).sum() / squares;
        double rest = pairs.stream()
                .mapToDouble(pair -> sq(pair.shown() - meanShown - perHz * (pair.frequencyHz() - meanHz))).sum();
        double rounding = sq(step) / 12; // variance of an error spread evenly over one step
        double reach = Math.sqrt(Math.max(rest / (count - 2), rounding)) * student(count - 2);
        double fromHz = fromHz(pairs);
        double toHz = toHz(pairs);
        Estimate offset = around(meanShown - perHz * meanHz, reach * Math.sqrt(1.0 / count + sq(meanHz) / squares));
        Optional<Estimate> throughZero =
                offset.hold(0) ? Optional.of(scatteredThroughZero(pairs, rounding)) : Optional.empty();
        double away = 0;
        for (double hz : new double[] {fromHz, toHz}) {
            Estimate here = around(meanShown + perHz * (hz - meanHz), reach * Math.sqrt(1.0 / count + sq(hz - meanHz) / squares));
            away = Math.max(away, away(here, throughZero, hz));
        }
        return new ScaleFit(around(perHz, reach / Math.sqrt(squares)), offset, throughZero, fromHz, toHz, away, Basis.SCATTER);
    }

    private static Estimate scatteredThroughZero(List<Pair> pairs, double rounding) {
        double squares = pairs.stream().mapToDouble(pair -> sq(pair.frequencyHz())).sum();
        double perHz = pairs.stream().mapToDouble(pair -> pair.frequencyHz() * pair.shown()).sum() / squares;
        double rest = pairs.stream().mapToDouble(pair -> sq(pair.shown() - perHz * pair.frequencyHz())).sum();
        double deviation = Math.sqrt(Math.max(rest / (pairs.size() - 1), rounding));
        return around(perHz, student(pairs.size() - 1) * deviation / Math.sqrt(squares));
    }

    private static double student(int freedom) {
        return new TDistribution(freedom).inverseCumulativeProbability(UPPER);
    }

    private static Estimate around(double value, double away) {
        return new Estimate(value - away, value, value + away);
    }

    private static double sq(double x) {
        return x * x;
    }

    private static double fromHz(List<Pair> pairs) {
        return pairs.stream().mapToDouble(Pair::frequencyHz).min().orElseThrow();
    }

    private static double toHz(List<Pair> pairs) {
        return pairs.stream().mapToDouble(Pair::frequencyHz).max().orElseThrow();
    }

    /** What is known of the slope, with the offset taken for 0 where it may be. */
    public Estimate factor() {
        return throughZero.orElse(perHz);
    }

    /** By the likeliest line, through zero where the pairs allow it, in the display's unit. */
    public double shown(double frequencyHz) {
        return throughZero.map(zero -> zero.value() * frequencyHz)
                .orElse(offset.value() + perHz.value() * frequencyHz);
    }
}
