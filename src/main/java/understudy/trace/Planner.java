package understudy.trace;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Where to inject next, so that the minutes still to come are least in expectation: exactly, where readings are never wrong
 * ({@link Intervals}); else as far ahead as {@link Lookahead#WORK} allows. The same odds give the same answer on every
 * machine. Not for several threads.
 */
final class Planner implements Policy {

    /** Below this share a difference in minutes is rounding, and the point nearer to the sensor comes first. */
    private static final double SAME = 1e-12;

    /**
     * The next point, and why.
     *
     * @param point           where to inject
     * @param reachMinutes    of that injection
     * @param goodProbability that it will read good
     * @param minutes         expected until the end, this injection included
     * @param exact           whether these are exact, or estimated beyond the horizon
     * @param runnerUp        the next best point, where there is another worth a look
     */
    record Choice(int point, double reachMinutes, double goodProbability, double minutes, boolean exact, Optional<RunnerUp> runnerUp) {}

    /**
     * The second best.
     *
     * @param point   where to inject
     * @param minutes expected until the end, if one injects there first
     */
    record RunnerUp(int point, double minutes) {}

    private final Route route;
    private final long work;
    private final boolean canBeWrong;
    private final Lookahead lookahead;
    private final Intervals intervals;
    private final double[] minutes;

    Planner(Route route) {
        this(route, Lookahead.WORK);
    }

    /** @param work terms of arithmetic for one answer */
    Planner(Route route, long work) {
        this.route = route;
        this.work = work;
        this.canBeWrong = route.canBeWrong();
        this.lookahead = new Lookahead(route);
        this.intervals = new Intervals(route.tests() + 1, route.confidence());
        this.minutes = new double[route.tests()];
        for (int test = 0; test < minutes.length; test++) {
            minutes[test] = route.access(test).minutes();
        }
    }

    @Override
    public int next(Odds odds) {
        return choose(odds).orElseThrow().point();
    }

    /** Empty when there is nothing more to do: a group is convicted, nothing can be told apart, or the evidence can't be. */
    Optional<Choice> choose(Odds odds) {
        if (route.ended(odds)) {
            return Optional.empty();
        }
        double[] groups = route.groups(odds);
        List<Lookahead.Option> options = canBeWrong ? lookahead.options(groups, work) : exact(groups);
        Lookahead.Option best = options.get(0);
        for (Lookahead.Option option : options) {
            best = option.minutes() < best.minutes() * (1 - SAME) ? option : best;
        }
        Lookahead.Option chosen = best;
        Optional<RunnerUp> runnerUp = options.stream().filter(option -> option != chosen)
                .min(Comparator.comparingDouble(Lookahead.Option::minutes))
                .map(option -> new RunnerUp(route.point(option.test()), option.minutes()));
        return Optional.of(new Choice(route.point(best.test()), minutes[best.test()], best.goodProbability(), best.minutes(),
                !canBeWrong, runnerUp));
    }

    private List<Lookahead.Option> exact(double[] groups) {
        intervals.solve(groups, groups.length, minutes, 0);
        List<Lookahead.Option> options = new ArrayList<>();
        double upTo = 0;
        for (int test = 0; test < minutes.length; test++) {
            upTo += groups[test];
            if (upTo > 0 && upTo < 1) {
                options.add(new Lookahead.Option(test, upTo, intervals.with(test, minutes, 0)));
            }
        }
        return options;
    }

    /** Terms of arithmetic so far. */
    long steps() {
        return lookahead.steps() + intervals.steps();
    }
}
