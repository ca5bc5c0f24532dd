package understudy.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Looks at the pairs for what is odd, sets that aside, and fits a line to what follows one. */
final class Learning {

    /** How much, in steps, the line must move over a stretch before standing still there is odd: rounding hides two. */
    private static final double STILL = 3;
    /** Steps of displays, in their last digit. */
    private static final double[] COARSE = {2, 5, 10, 20, 25, 50, 100};
    private static final int MOST_OUTLIERS = 10;
    /** Where numbers waver anyway, one without which the rest lie so much closer is an outlier. */
    private static final double STANDS_OUT = 4;

    private final List<Pair> all;
    private final List<DisplayTrait> findings = new ArrayList<>();
    private List<Pair> pairs;
    private double step;

    Learning(List<Pair> inOrder, double step) {
        this.all = List.copyOf(inOrder);
        this.pairs = new ArrayList<>(inOrder);
        this.step = step;
    }

    Learned learn(DisplayUnit unit) {
        standsStillAtTheTop();
        silentAtTheBottom();
        if (!explained(pairs)) {
            coarseSteps();
        }
        double lag = explained(pairs) ? 0 : lag();
        if (lag > 0) {
            findings.add(new DisplayTrait.Lags(lag));
            return new Learned(unit, step, ScaleFit.lagging(pairs, lag, step), pairs, findings);
        }
        if (!explained(pairs)) {
            outliers();
        }
        ScaleFit fit = ScaleFit.of(pairs, step);
        if (fit.basis() == ScaleFit.Basis.SCATTER) {
            double away = pairs.stream().mapToDouble(pair -> Math.abs(pair.shown() - fit.shown(pair.frequencyHz()))).max().orElse(0);
            findings.add(new DisplayTrait.Wavers(away));
        }
        return new Learned(unit, step, fit, pairs, findings);
    }

    private boolean explained(List<Pair> some) {
        return Strip.halfHeight(some) <= step / 2 * (1 + 1e-9);
    }

    /** The last pairs by frequency show one number where the line of the others goes on. */
    private void standsStillAtTheTop() {
        List<Pair> sorted = Learned.byFrequency(pairs);
        Pair last = sorted.get(sorted.size() - 1);
        int first = sorted.size();
        while (first > 0 && Math.abs(sorted.get(first - 1).shown() - last.shown()) <= step) {
            first--;
        }
        List<Pair> still = sorted.subList(first, sorted.size());
        List<Pair> rest = sorted.subList(0, first);
        boolean nothing = Math.abs(last.shown()) <= step / 2;
        if (isLine(rest) && (nothing || still.size() > 1)) {
            ScaleFit line = ScaleFit.of(rest, step);
            double fromHz = still.get(0).frequencyHz();
            double moves = nothing ? Math.abs(line.shown(fromHz)) : Math.abs(line.perHz().value()) * (last.frequencyHz() - fromHz);
            if (moves > STILL * step) {
                findings.add(new DisplayTrait.Stops(fromHz, last.shown()));
                pairs.removeAll(still);
            }
        }
    }

    /** The first pairs by frequency show nothing where the line of the others shows something. */
    private void silentAtTheBottom() {
        List<Pair> silent = new ArrayList<>();
        List<Pair> rest = Learned.byFrequency(pairs);
        while (!rest.isEmpty() && Math.abs(rest.get(0).shown()) <= step / 2) {
            silent.add(rest.remove(0));
        }
        if (silent.isEmpty() || !isLine(rest)) {
            return;
        }
        ScaleFit line = ScaleFit.of(rest, step);
        double aboveHz = silent.get(silent.size() - 1).frequencyHz();
        if (Math.abs(line.shown(aboveHz)) > STILL * step) {
            findings.add(new DisplayTrait.Starts(aboveHz));
            pairs.removeAll(silent);
        }
    }

    private static boolean isLine(List<Pair> some) {
        return some.stream().mapToDouble(Pair::frequencyHz).distinct().count() >= 2;
    }

    private void coarseSteps() {
        double fine = step;
        for (double times : COARSE) {
            double coarse = times * fine;
            boolean allMultiples = pairs.stream().allMatch(pair -> isMultiple(pair.shown(), coarse));
            if (allMultiples && Strip.halfHeight(pairs) <= coarse / 2 * (1 + 1e-9)) {
                step = coarse;
                findings.add(new DisplayTrait.CoarseSteps(coarse));
                return;
            }
        }
    }

    private static boolean isMultiple(double shown, double step) {
        return Math.abs(shown / step - Math.rint(shown / step)) < 1e-6; // shown has few digits; this is rounding of doubles
    }

    /**
     * How far pairs that were reached from below lie under those reached from above, if the two lie on parallel lines; 0
     * if they don't.
     */
    private double lag() {
        List<Pair> rising = new ArrayList<>();
        List<Pair> falling = new ArrayList<>();
        for (int i = 1; i < all.size(); i++) {
            double change = all.get(i).frequencyHz() - all.get(i - 1).frequencyHz();
            if (change != 0 && pairs.contains(all.get(i))) {
                (change > 0 ? rising : falling).add(all.get(i));
            }
        }
        if (!isLine(rising) || !isLine(falling)) {
            return 0;
        }
        double perHz = commonSlope(rising, falling);
        double lag = level(falling, perHz) - level(rising, perHz);
        List<Pair> evened = new ArrayList<>();
        rising.forEach(pair -> evened.add(new Pair(pair.frequencyHz(), pair.shown() + lag / 2)));
        falling.forEach(pair -> evened.add(new Pair(pair.frequencyHz(), pair.shown() - lag / 2)));
        // rounding makes up to a step of the difference, and half a step of what is left
        if (lag <= step || Strip.halfHeight(evened) > Math.max(step, Strip.halfHeight(pairs) / 2)) {
            return 0;
        }
        return lag;
    }

    private static double commonSlope(List<Pair> a, List<Pair> b) {
        double squares = 0;
        double products = 0;
        for (List<Pair> some : List.of(a, b)) {
            double meanHz = some.stream().mapToDouble(Pair::frequencyHz).average().orElseThrow();
            squares += some.stream().mapToDouble(p -> Math.pow(p.frequencyHz() - meanHz, 2)).sum();
            products += some.stream().mapToDouble(p -> (p.frequencyHz() - meanHz) * p.shown()).sum();
        }
        return products / squares;
    }

    private static double level(List<Pair> some, double perHz) {
        return some.stream().mapToDouble(pair -> pair.shown() - perHz * pair.frequencyHz()).average().orElseThrow();
    }

    /** Takes away, one by one, the pair without which the others lie closest to a line. */
    private void outliers() {
        int most = Math.min(MOST_OUTLIERS, (pairs.size() - 1) / 3);
        List<Pair> left = new ArrayList<>(pairs);
        List<Pair> out = new ArrayList<>();
        while (out.size() < most && !explained(left)) {
            Pair furthest = furthest(left);
            left.remove(furthest);
            out.add(furthest);
        }
        boolean stands = left.size() >= 4 && Strip.halfHeight(left) * STANDS_OUT < Strip.halfHeight(pairs);
        if (out.isEmpty() || !explained(left) && !stands) {
            if (pairs.size() == 3) {
                findings.add(new DisplayTrait.OneOfThese(pairs));
            }
            return;
        }
        if (out.size() == 1) {
            List<Pair> possible = pairs.stream().filter(pair -> explained(without(pair, pairs))).toList();
            if (possible.size() > 1) {
                findings.add(new DisplayTrait.OneOfThese(possible));
                return;
            }
        }
        ScaleFit line = ScaleFit.of(left, step);
        for (Pair pair : out) {
            findings.add(new DisplayTrait.Outlier(pair, pair.shown() - line.shown(pair.frequencyHz())));
        }
        pairs = left;
    }

    private static Pair furthest(List<Pair> some) {
        return some.stream().filter(pair -> isLine(without(pair, some)))
                .min(Comparator.comparingDouble(pair -> Strip.halfHeight(without(pair, some)))).orElse(some.get(0));
    }

    private static List<Pair> without(Pair pair, List<Pair> some) {
        List<Pair> others = new ArrayList<>(some);
        others.remove(pair);
        return others;
    }
}
