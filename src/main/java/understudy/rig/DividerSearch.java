package understudy.rig;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import understudy.quantity.Unit;

/**
 * Finds the divider with the best worst-case margin that keeps the limits, among all pairs of preferred values: series 1
 * kohm to 1 Mohm, shunt 100 ohm to 1 Mohm or none.
 *
 * <p>It is the true optimum: a pair's worst case is no better than any one of its builds. So pairs are taken by the
 * margin of a bad build, the worst of all first, and the search ends where that falls below the best worst case found.
 */
public final class DividerSearch {
    static final double LEAST_SERIES_OHMS = 1e3; // a half-watt resistor of 1 kohm stands 16 V
    static final double LEAST_SHUNT_OHMS = 100;
    static final double MOST_OHMS = 1e6;
    /** Above which one known kind of reluctor input takes the sensor for open (a datasheet); tried when less fails. */
    private static final double TAKEN_FOR_OPEN_OHMS = 12e3;
    private static final double LEAST_FARADS = 1e-8;
    private static final double MOST_FARADS = 1e-3;
    private static final double CAPACITOR_TOLERANCE = 0.2; // usual for electrolytic and ceramic ones
    private static final double MID_HZ = 1e3;

    private DividerSearch() {}

    /**
     * What is asked for.
     *
     * @param partTolerance of both resistors, as a fraction
     * @param cornerHz      where direct voltage is blocked, the frequency below which the signal may fall off
     * @param coupling      as wanted, or none: straight where nothing but the signal is on the pins, else a capacitor
     */
    public record Request(
            AudioOutput output,
            Lead lead,
            Input input,
            Use use,
            Preferred series,
            double partTolerance,
            double cornerHz,
            CurrentLimits limits,
            Optional<Coupling> coupling) {

        Request with(AudioOutput otherOutput, Preferred otherSeries, CurrentLimits otherLimits) {
            return new Request(otherOutput, lead, input, use, otherSeries, partTolerance, cornerHz, otherLimits, coupling);
        }
    }

    /**
     * What was found.
     *
     * @param assessment of the rig found
     * @param cautions   what the user should know of it, in plain sentences
     */
    public record Design(Assessment assessment, List<String> cautions) {
        public Design {
            cautions = List.copyOf(cautions);
        }
    }

    /** @param mostVolts no worst case of it is better than this */
    private record Candidate(Divider divider, double mostVolts) {}

    /** The best divider, or a refusal that says why there is none and what would do. */
    public static Design best(Request request) {
        OutOfReach.check(request.input());
        List<Candidate> candidates = candidates(request);
        List<String> cautions = new ArrayList<>();
        for (double mostDirectOhms : directPaths(request.input())) {
            Optional<Candidate> best = best(request, candidates, mostDirectOhms);
            if (best.isPresent()) {
                Rig rig = rig(request, best.get().divider());
                Assessment assessment = Assessment.of(withCapacitor(rig, request), request.input(), request.use());
                caution(request, assessment, cautions);
                return new Design(assessment, cautions);
            }
        }
        throw NoDivider.refusal(request);
    }

    /** All that keep the limits and switch the input at nominal values, the best first. */
    private static List<Candidate> candidates(Request request) {
        List<Candidate> candidates = new ArrayList<>();
        Coupling coupling = coupling(request);
        for (Optional<Spread> shunt : shunts(request.series(), request.partTolerance())) {
            List<Divider> dividers = dividers(request.series(), request.partTolerance(), shunt, coupling);
            for (Divider divider : dividers.subList(firstToKeep(request, dividers), dividers.size())) {
                double margin = new Connection(rig(request, divider), request.input())
                        .levels(request.use()).marginVolts(request.input());
                if (margin > 0) {
                    candidates.add(new Candidate(divider, margin));
                }
            }
        }
        return byBadBuild(request, candidates);
    }

    /** Tells each by a build with its parts at the ends that are worst for the nominally best one; the best first. */
    private static List<Candidate> byBadBuild(Request request, List<Candidate> candidates) {
        Comparator<Candidate> byMargin = Comparator.comparingDouble(Candidate::mostVolts);
        List<Candidate> told = new ArrayList<>();
        for (boolean shunted : new boolean[] {true, false}) { // with other parts, corners are counted otherwise
            List<Candidate> alike = candidates.stream()
                    .filter(candidate -> candidate.divider().shuntOhms().isPresent() == shunted).toList();
            alike.stream().max(byMargin).map(best -> WorstCase.worst(rig(request, best.divider()), request.input(),
                    request.use())).ifPresent(ends -> alike.forEach(candidate -> {
                        WorstCase.Build bad = WorstCase.corner(rig(request, candidate.divider()), request.input(), ends);
                        told.add(new Candidate(candidate.divider(), Math.min(
                                candidate.mostVolts(), WorstCase.marginVolts(bad, request.use()))));
                    }));
        }
        told.sort(byMargin.reversed());
        return told;
    }

    /**
     * With one shunt and rising series resistors, the place of the first that keeps the limits at nominal values; all
     * after it do too: in every state the series branch's share of a clip's current, with the source at its worse end,
     * falls as its resistance rises, and the rest does not rise.
     */
    private static int firstToKeep(Request request, List<Divider> dividers) {
        int low = 0;
        int high = dividers.size();
        while (low < high) {
            int middle = (low + high) / 2;
            if (new StateStudy(rig(request, dividers.get(middle)), request.input(), request.use())
                    .keeps(request.limits())) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    /** The best without regard to the direct path, if there is one. */
    static Optional<Divider> find(Request request) {
        return best(request, candidates(request), Double.POSITIVE_INFINITY).map(Candidate::divider);
    }

    private static Optional<Candidate> best(Request request, List<Candidate> candidates, double mostDirectOhms) {
        Candidate best = null;
        double bestVolts = 0;
        CornerCheck corners = new CornerCheck(request.input(), request.use(), request.limits());
        for (Candidate candidate : candidates) {
            if (candidate.mostVolts() <= bestVolts) {
                break;
            }
            Rig rig = rig(request, candidate.divider());
            if (directFits(rig, request.input(), mostDirectOhms) && corners.keeps(rig)) {
                double volts = WorstCase.marginVolts(rig, request.input(), request.use());
                if (volts > bestVolts) {
                    best = candidate;
                    bestVolts = volts;
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** The direct resistances across the clips to be content with, in this order. */
    private static List<Double> directPaths(Input input) {
        if (!(input instanceof ReluctorInput reluctor)) {
            return List.of(Double.POSITIVE_INFINITY);
        }
        List<Double> paths = new ArrayList<>(List.of(reluctor.mostSensorOhms()));
        if (reluctor.mostSensorOhms() < TAKEN_FOR_OPEN_OHMS) {
            paths.add(TAKEN_FOR_OPEN_OHMS);
        }
        paths.add(Double.POSITIVE_INFINITY);
        return paths;
    }

    private static boolean directFits(Rig rig, Input input, double mostDirectOhms) {
        if (Double.isInfinite(mostDirectOhms)) {
            return true;
        }
        double ohms = Assessment.directOhms(rig, input);
        return ohms >= ReluctorInput.LEAST_COIL_OHMS && ohms <= mostDirectOhms;
    }

    /** The divider nearest to a refused one, by the ratios of its resistors, that keeps the limits. */
    static Optional<Divider> nearest(Assessment refused, CurrentLimits limits, Preferred series) {
        Divider from = refused.rig().divider();
        double shunt = from.shuntOhms().map(Spread::nominal).orElse(MOST_OHMS);
        double tolerance = from.seriesOhms().tolerance();
        List<Divider> all = new ArrayList<>();
        for (Optional<Spread> other : shunts(series, tolerance)) {
            if (other.isPresent() == from.shuntOhms().isPresent()) {
                all.addAll(dividers(series, tolerance, other, from.coupling()));
            }
        }
        CornerCheck corners = new CornerCheck(refused.input(), refused.use(), limits);
        all.sort(Comparator.comparingDouble(divider ->
                Math.abs(Math.log(divider.seriesOhms().nominal() / from.seriesOhms().nominal()))
                        + Math.abs(Math.log(divider.shuntOhms().map(Spread::nominal).orElse(MOST_OHMS) / shunt))));
        return all.stream()
                .filter(divider -> {
                    Rig rig = refused.rig().withDivider(divider);
                    return new StateStudy(rig, refused.input(), refused.use()).keeps(limits) // most fail here already
                            && corners.keeps(rig);
                })
                .findFirst();
    }

    private static List<Optional<Spread>> shunts(Preferred values, double tolerance) {
        List<Optional<Spread>> shunts = new ArrayList<>();
        for (double ohms : values.between(LEAST_SHUNT_OHMS, MOST_OHMS)) {
            shunts.add(Optional.of(new Spread(ohms, tolerance)));
        }
        shunts.add(Optional.empty());
        return shunts;
    }

    /** One shunt with every series resistor, rising. */
    private static List<Divider> dividers(
            Preferred values, double tolerance, Optional<Spread> shunt, Coupling coupling) {
        return values.between(LEAST_SERIES_OHMS, MOST_OHMS).stream()
                .map(ohms -> new Divider(new Spread(ohms, tolerance), shunt, coupling)).toList();
    }

    static Rig rig(Request request, Divider divider) {
        return new Rig(request.output(), divider, request.lead());
    }

    private static Coupling coupling(Request request) {
        boolean quiet = request.input() instanceof ResistiveInput
                || request.input() instanceof ReluctorInput reluctor
                && reluctor.biasVolts().nominal() == 0 && !reluctor.differential();
        // while values are searched any capacitor will do: none of what is judged depends on its size
        return request.coupling().orElse(
                quiet ? new Coupling.Direct() : new Coupling.Capacitor(Spread.exactly(1e-6)));
    }

    /**
     * With the smallest capacitor that puts the corner where it was asked for, unless one was given; where the output
     * itself falls off earlier, with the smallest that hardly adds to that.
     */
    private static Rig withCapacitor(Rig rig, Request request) {
        if (request.coupling().isPresent() || !(rig.divider().coupling() instanceof Coupling.Capacitor)) {
            return rig;
        }
        double least = cornerHz(withCapacitor(rig, MOST_FARADS), request.input());
        double wanted = Math.max(request.cornerHz(), 1.1 * least);
        for (double farads : Preferred.E12.between(LEAST_FARADS, MOST_FARADS)) {
            Rig tried = withCapacitor(rig, farads);
            if (cornerHz(tried, request.input()) <= wanted) {
                return tried;
            }
        }
        return withCapacitor(rig, MOST_FARADS);
    }

    private static Rig withCapacitor(Rig rig, double farads) {
        Divider divider = rig.divider();
        return rig.withDivider(new Divider(divider.seriesOhms(), divider.shuntOhms(),
                new Coupling.Capacitor(new Spread(farads, CAPACITOR_TOLERANCE))));
    }

    private static double cornerHz(Rig rig, Input input) {
        return new Connection(rig, input).lowCornerHz(Probe.PINS, MID_HZ).orElse(0.0);
    }

    private static void caution(Request request, Assessment assessment, List<String> cautions) {
        if (request.input() instanceof ReluctorInput reluctor && assessment.directOhms() > reluctor.mostSensorOhms()) {
            cautions.add("The input may report an open circuit: it expects a sensor of at most "
                    + Bounds.print(reluctor.mostSensorOhms(), Unit.OHM) + " across the clips, this rig shows "
                    + (Double.isInfinite(assessment.directOhms()) ? "none at all"
                    : Bounds.print(assessment.directOhms(), Unit.OHM))
                    + ". No pair of resistors with less keeps the limits and still switches the input.");
        }
    }
}
