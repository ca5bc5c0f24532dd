package understudy.preflight;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoublePredicate;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** One setup judged over speed, in all its builds; keeps what it has judged. May be used by several threads. */
final class SpeedSearch {
    /** Ends are found to less than half of the 1 % that is promised. */
    private static final double CLOSE = 1.004;
    static final int POINTS = 25;
    /** A turn of more frames is not judged: it would take too long, and no engine turns so slowly. */
    private static final double MOST_CYCLE_FRAMES = 400_000;

    private final Setup setup;
    private final CycleEvents events;
    private final List<Setup> corners;
    private final Map<Double, AtSpeed> known = new ConcurrentHashMap<>();
    private final Map<Double, Boolean> decoded = new ConcurrentHashMap<>();
    /** The corner that was not decoded when that was last tried: likely not to be so at the next speed either. */
    private volatile int suspect;
    private final double lowestHz;
    private final double topHz;
    private final double chosenHz;

    /** @param chosenHz the speed that matters most; around it the usable range is sought */
    SpeedSearch(Setup setup, double chosenHz) {
        this.setup = setup;
        this.topHz = setup.pattern().speed().toHz();
        this.events = CycleEvents.of(setup);
        this.corners = Corners.of(setup);
        double slowest = Double.isNaN(events.fixedHz())
                ? setup.rateHz() / MOST_CYCLE_FRAMES / events.cyclesPerTurn() : topHz / 1000;
        this.lowestHz = Math.min(topHz, Math.max(setup.pattern().speed().fromHz(), slowest));
        this.chosenHz = Math.max(lowestHz, Math.min(topHz, chosenHz));
    }

    double chosenHz() {
        return chosenHz;
    }

    /** Whether any part has a tolerance. */
    boolean hasCorners() {
        return !corners.isEmpty();
    }

    AtSpeed at(double speedHz) {
        return known.computeIfAbsent(speedHz, hz -> {
            Played played = Played.at(setup, events, hz);
            Decoding nominal = Decoding.of(setup, events, played, hz);
            Decoding worst = nominal;
            for (Setup corner : corners) {
                worst = worst.worse(Decoding.of(corner, events, played, hz));
            }
            return new AtSpeed(worst, nominal);
        });
    }

    /** Whether all builds decode. */
    boolean decodes(double speedHz) {
        AtSpeed judged = known.get(speedHz);
        return judged != null ? judged.isDecoded() : decoded.computeIfAbsent(speedHz, hz -> {
            Played played = Played.at(setup, events, hz);
            for (int i = 0; i < corners.size(); i++) {
                int corner = (suspect + i) % corners.size();
                if (!Decoding.of(corners.get(corner), events, played, hz).isDecoded()) {
                    suspect = corner;
                    return false;
                }
            }
            return Decoding.of(setup, events, played, hz).isDecoded();
        });
    }

    boolean decodesNominally(double speedHz) {
        AtSpeed judged = known.get(speedHz);
        return (judged != null ? judged.nominal() : Decoding.of(setup, speedHz)).isDecoded();
    }

    /** From the lowest speed to the top in even ratios, the chosen speed among them. */
    double[] speedsHz() {
        return DoubleStream.concat(DoubleStream.of(chosenHz), IntStream.range(0, POINTS).mapToDouble(
                i -> i == POINTS - 1 ? topHz : lowestHz * Math.pow(topHz / lowestHz, i / (POINTS - 1.0))))
                .sorted().distinct().toArray();
    }

    /** All of those judged; {@code each} runs after each. */
    List<AtSpeed> overview(Runnable each) {
        return DoubleStream.of(speedsHz()).parallel().mapToObj(this::at).peek(judged -> each.run()).toList();
    }

    /**
     * The decoded stretch around the chosen speed; where that is not decoded, the longest.
     *
     * @param decodes whether a speed is decoded
     */
    Optional<Stretch> usable(DoublePredicate decodes) {
        double[] speeds = speedsHz();
        boolean[] good = new boolean[speeds.length];
        IntStream.range(0, speeds.length).parallel().forEach(i -> good[i] = decodes.test(speeds[i]));
        Stretch best = null;
        for (int i = 0; i < speeds.length; i++) {
            int from = i;
            while (i < speeds.length && good[i]) {
                i++;
            }
            if (i > from) {
                Stretch stretch = stretch(decodes, speeds, from, i - 1);
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

    private static Stretch stretch(DoublePredicate decodes, double[] speeds, int first, int last) {
        double[] low = first == 0
                ? new double[] {speeds[0], Double.NaN} : bisect(decodes, speeds[first], speeds[first - 1]);
        double[] high = last == speeds.length - 1
                ? new double[] {speeds[last], Double.NaN} : bisect(decodes, speeds[last], speeds[last + 1]);
        return new Stretch(low[0], high[0], low[1], high[1]);
    }

    /** The end between a speed that is decoded and one that is not: the last good, the first bad. */
    private static double[] bisect(DoublePredicate decodes, double goodHz, double badHz) {
        double good = goodHz;
        double bad = badHz;
        while (Math.max(good / bad, bad / good) > CLOSE) {
            double middle = Math.sqrt(good * bad);
            if (decodes.test(middle)) {
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
            if (!decodes(next)) {
                return bisect(this::decodes, good, next)[0];
            }
            good = next;
        }
        return end;
    }
}
