package understudy.preflight;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** One setup judged over speed; keeps what it has judged. May be used by several threads. */
final class Sweep {
    /** Ends are found to less than half of the 1 % that is promised. */
    private static final double CLOSE = 1.004;
    static final int POINTS = 25;
    /** A turn of more frames is not judged: it would take too long, and no engine turns so slowly. */
    private static final double MOST_CYCLE_FRAMES = 400_000;

    private final Setup setup;
    private final Map<Double, Judgement> known = new ConcurrentHashMap<>();
    private final double lowestHz;
    private final double topHz;
    private final double chosenHz;

    /** @param chosenHz the speed that matters most; around it the usable range is sought */
    Sweep(Setup setup, double chosenHz) {
        this.setup = setup;
        this.topHz = setup.pattern().speed().toHz();
        CycleEvents events = CycleEvents.of(setup);
        double slowest = Double.isNaN(events.fixedHz())
                ? setup.rateHz() / MOST_CYCLE_FRAMES / events.cyclesPerTurn() : topHz / 1000;
        this.lowestHz = Math.min(topHz, Math.max(setup.pattern().speed().fromHz(), slowest));
        this.chosenHz = Math.max(lowestHz, Math.min(topHz, chosenHz));
    }

    double chosenHz() {
        return chosenHz;
    }

    Judgement at(double speedHz) {
        return known.computeIfAbsent(speedHz, hz -> Judgement.of(setup, hz));
    }

    /** From the lowest speed to the top in even ratios, the chosen speed among them; {@code each} runs after each. */
    List<Judgement> overview(Runnable each) {
        double[] speeds = DoubleStream.concat(DoubleStream.of(chosenHz), IntStream.range(0, POINTS).mapToDouble(
                i -> i == POINTS - 1 ? topHz : lowestHz * Math.pow(topHz / lowestHz, i / (POINTS - 1.0))))
                .sorted().distinct().toArray();
        return DoubleStream.of(speeds).parallel().mapToObj(this::at).peek(judged -> each.run()).toList();
    }

    /** The decoded stretch around the chosen speed; where that is not decoded, the longest. */
    Optional<Stretch> usable(List<Judgement> overview) {
        Stretch best = null;
        for (int i = 0; i < overview.size(); i++) {
            int from = i;
            while (i < overview.size() && overview.get(i).isDecoded()) {
                i++;
            }
            if (i > from) {
                Stretch stretch = stretch(overview, from, i - 1);
                boolean here = stretch.fromHz <= chosenHz && chosenHz <= stretch.toHz;
                best = best == null || here || stretch.ratio() > best.ratio() ? stretch : best;
                if (here) {
                    break;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /**
     * A decoded stretch of speeds.
     *
     * @param below speed just below it that is not decoded; NaN at the lowest speed
     * @param above speed just above it that is not decoded; NaN at the top
     */
    record Stretch(double fromHz, double toHz, double below, double above) {
        double ratio() {
            return toHz / fromHz;
        }
    }

    private Stretch stretch(List<Judgement> overview, int first, int last) {
        double[] low = first == 0
                ? new double[] {overview.get(0).speedHz(), Double.NaN}
                : bisect(overview.get(first).speedHz(), overview.get(first - 1).speedHz());
        double[] high = last == overview.size() - 1
                ? new double[] {overview.get(last).speedHz(), Double.NaN}
                : bisect(overview.get(last).speedHz(), overview.get(last + 1).speedHz());
        return new Stretch(low[0], high[0], low[1], high[1]);
    }

    /** The end between a speed that is decoded and one that is not: the last good, the first bad. */
    private double[] bisect(double goodHz, double badHz) {
        double good = goodHz;
        double bad = badHz;
        while (Math.max(good / bad, bad / good) > CLOSE) {
            double middle = Math.sqrt(good * bad);
            if (at(middle).isDecoded()) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        return new double[] {good, bad};
    }

    /** Whether a speed is at an end of the pattern's range. */
    boolean isEnd(double speedHz) {
        return speedHz == topHz || speedHz == lowestHz;
    }

    /** How far from a decoded speed on one can go towards an end of the pattern's range. */
    double reach(double fromHz, boolean upwards) {
        double end = upwards ? topHz : lowestHz;
        double step = upwards ? 1.3 : 1 / 1.3;
        double good = fromHz;
        while (good != end) {
            double next = upwards ? Math.min(end, good * step) : Math.max(end, good * step);
            if (!at(next).isDecoded()) {
                return bisect(good, next)[0];
            }
            good = next;
        }
        return end;
    }
}
