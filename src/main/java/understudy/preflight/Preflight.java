package understudy.preflight;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;

/**
 * The computed answer to: will this input decode this output from this rig, and over which speeds. It holds for whatever
 * the parts turn out to be within their tolerances; what holds at nominal values stands beside it.
 *
 * @param overview judgements by speed, from the lowest to the top; empty where only the range was asked for
 * @param chosen   the one at the speed that matters most
 * @param low      lower end of the usable range; none when no speed is decoded
 * @param high     its upper end, likewise
 * @param nominal  the usable range with every part at its nominal value; none when no
 *                speed is decoded, or only the range was asked for
 * @param toleranced some part is not exact, so that range and nominal range may differ
 * @param reason   without a range: what ends it at the chosen speed
 * @param remedies without a range: what would make it decode at the chosen speed
 */
public record Preflight(
        Setup setup,
        List<AtSpeed> overview,
        AtSpeed chosen,
        Optional<RangeEnd> low,
        Optional<RangeEnd> high,
        Optional<Span> nominal,
        boolean toleranced,
        Optional<Limit> reason,
        List<Remedy> remedies) {

    /** Changes that move an end by less than this, and not to the end of the pattern's range, are not worth a word. */
    private static final double WORTH = 1.05;

    /** From one speed to another, turns per second. */
    public record Span(double fromHz, double toHz) {}

    public Preflight {
        overview = List.copyOf(overview);
        remedies = List.copyOf(remedies);
    }

    /**
     * The whole answer, with what ends the range and what would widen it.
     *
     * @param chosenHz speed that matters most, turns per second, within the pattern's range
     * @param progress told the part of the work that is done, 0 to 1, by one thread at a time
     * @throws Refused for an output that has no teeth and is no tone
     */
    public static Preflight of(Setup setup, double chosenHz, DoubleConsumer progress) {
        return of(setup, chosenHz, true, new Work(progress));
    }

    /** The range alone, quicker: for a line before something is played. */
    public static Preflight rangeOnly(Setup setup, double chosenHz) {
        return of(setup, chosenHz, false, new Work(part -> {}));
    }

    private static Preflight of(Setup setup, double chosenHz, boolean tryChanges, Work work) {
        SpeedSearch sweep = new SpeedSearch(setup, chosenHz);
        List<AtSpeed> overview = tryChanges ? sweep.overview(work::step) : List.of();
        AtSpeed chosen = sweep.at(sweep.chosenHz());
        Optional<SpeedSearch.Stretch> usable = sweep.usable(sweep::decodes);
        Optional<Span> nominal = (!sweep.hasCorners() ? usable : tryChanges ? sweep.usable(sweep::decodesNominally) : Optional.<SpeedSearch.Stretch>empty())
                .map(stretch -> new Span(stretch.fromHz(), stretch.toHz()));
        if (usable.isEmpty()) {
            List<Tried> helpful = tryChanges ? tried(setup, chosen.speedHz(), true, 1, work) : List.of();
            return new Preflight(setup, overview, chosen, Optional.empty(), Optional.empty(), nominal,
                    sweep.hasCorners(), tryChanges ? Optional.of(limit(helpful)) : Optional.empty(),
                    helpful.stream().flatMap(tried -> tried.change.remedy().stream()).toList());
        }
        SpeedSearch.Stretch range = usable.get();
        return new Preflight(setup, overview, chosen,
                Optional.of(end(setup, range.fromHz(), range.below(), false, tryChanges, work)),
                Optional.of(end(setup, range.toHz(), range.above(), true, tryChanges, work)), nominal, sweep.hasCorners(), Optional.empty(),
                List.of());
    }

    private static RangeEnd end(
            Setup setup, double goodHz, double badHz, boolean upwards, boolean tryChanges, Work work) {
        if (Double.isNaN(badHz)) {
            return new RangeEnd(goodHz, Optional.of(Limit.PATTERN), List.of());
        }
        if (!tryChanges) {
            return new RangeEnd(goodHz, Optional.empty(), List.of());
        }
        List<Tried> helpful = tried(setup, badHz, upwards, WORTH, work);
        List<RangeEnd.Widening> widenings = helpful.stream()
                .flatMap(tried -> tried.change.remedy().map(remedy -> new RangeEnd.Widening(remedy, tried.reachHz)).stream())
                .toList();
        return new RangeEnd(goodHz, Optional.of(limit(helpful)), widenings);
    }

    private record Tried(Change change, double reachHz) {}

    /** The changes with which a speed is decoded, those that reach furthest first, else in the order of trying. */
    private static List<Tried> tried(Setup setup, double speedHz, boolean upwards, double worth, Work work) {
        List<Change> changes = Change.of(setup, upwards);
        work.expect(changes.size());
        return changes.parallelStream()
                .map(change -> {
                    SpeedSearch sweep = new SpeedSearch(change.changed(), speedHz);
                    double reachHz = sweep.decodes(speedHz) ? sweep.reach(speedHz, upwards) : Double.NaN;
                    work.step();
                    boolean helps = sweep.isEnd(reachHz) || Math.max(reachHz / speedHz, speedHz / reachHz) >= worth;
                    return helps ? new Tried(change, reachHz) : null;
                })
                .filter(Objects::nonNull)
                .sorted(Comparator.comparingDouble(tried -> upwards ? -tried.reachHz : tried.reachHz))
                .toList();
    }

    private static Limit limit(List<Tried> helpful) {
        return helpful.isEmpty() ? Limit.TOGETHER : helpful.get(0).change.limit();
    }

    /** Counts what is done of what is known to be to do. */
    private static final class Work {
        private final DoubleConsumer progress;
        private int done;
        private int expected = SpeedSearch.POINTS + 1;

        Work(DoubleConsumer progress) {
            this.progress = progress;
        }

        synchronized void expect(int more) {
            expected += more;
        }

        synchronized void step() {
            progress.accept(Math.min(1, (double) ++done / expected));
        }
    }

    /**
     * One line: "decodes from 137 rpm to 7200 rpm on this input, with every part at its worst (from 110 rpm at nominal values);
     * 0.23 V to spare at 800 rpm".
     */
    public String summary() {
        Decoding at = chosen.worst();
        String spare = print(Math.abs(at.marginVolts())) + (at.marginVolts() < 0 ? " short" : " to spare")
                + " at " + print(at.speedHz(), setup);
        String worst = toleranced ? ", with every part at its worst" + besideIt() : "";
        if (low.isEmpty() || high.isEmpty()) {
            return "does not decode at any speed on this input" + worst + ": " + at.verdict().words() + "; " + spare;
        }
        return "decodes from " + print(low.get().speedHz(), setup) + " to " + print(high.get().speedHz(), setup)
                + " on this input" + worst + "; " + spare;
    }

    private String besideIt() {
        return nominal.map(span -> " (from " + print(span.fromHz(), setup) + " to " + print(span.toHz(), setup)
                + " at nominal values)").orElse("");
    }

    private static String print(double speedHz, Setup setup) {
        return setup.pattern().speed().print(speedHz);
    }

    private static String print(double volts) {
        return new Quantity(volts, Unit.VOLT).rounded(3);
    }
}
