package understudy.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What the injections on the suspect circuit say together, before and after a repair. */
final class Evidence {

    /** A display that comes and goes with one piece points at it; but a hand moves its neighbours too. */
    private static final double MOVED_RIGHT = 0.9;
    /** A repair may have missed what it was to mend. */
    private static final double REPAIR_MISSED = 0.1;

    private final Circuit circuit;
    private final Route route;
    private Odds odds;
    private Optional<Finding> repaired = Optional.empty();
    private boolean repairToProve;
    private boolean repairProven;
    private final List<Numbered> counted = new ArrayList<>();

    Evidence(Circuit circuit, List<Numbered> standing) {
        this.circuit = circuit;
        this.route = circuit.route();
        this.odds = circuit.odds();
        standing.forEach(this::take);
    }

    private void take(Numbered event) {
        if (event.entry() instanceof Entry.Repaired) {
            repaired = Optional.of(likeliest());
            repairToProve = true;
            repairProven = false;
        } else if (event.entry() instanceof Entry.Injected injected && !injected.place().onReference()) {
            Verdict verdict = Judgement.of(injected).verdict();
            if (verdict != Verdict.UNDECIDED) {
                take(event, injected, verdict == Verdict.GOOD);
            }
        }
    }

    private void take(Numbered event, Entry.Injected injected, boolean good) {
        boolean whereTheSensorIs = injected.place().point() == circuit.firstInjectable();
        if ((repairToProve || repairProven) && good) {
            repairProven |= whereTheSensorIs;
            repairToProve &= !whereTheSensorIs;
            return; // the fault is gone: that says nothing of where it was
        }
        if (repairToProve || repairProven) {
            // it is not: what was repaired is likely sound, and what was known before still holds
            odds = odds.after(likelihoods(repaired.orElseThrow()));
            repaired = Optional.empty();
            repairToProve = false;
            repairProven = false;
        }
        counted.add(event);
        odds = route.after(odds, injected.place().point(), good);
        injected.moved().ifPresent(moved -> odds = odds.after(likelihoods(moved)));
    }

    private double[] likelihoods(int moved) {
        double[] likelihoods = new double[circuit.points().size() + 1];
        Arrays.fill(likelihoods, 1 - MOVED_RIGHT);
        likelihoods[moved] = MOVED_RIGHT;
        return likelihoods;
    }

    private double[] likelihoods(Finding repaired) {
        double[] likelihoods = new double[circuit.points().size() + 1];
        Arrays.fill(likelihoods, 1);
        repaired.suspects().forEach(suspect -> likelihoods[suspect.index()] = REPAIR_MISSED);
        return likelihoods;
    }

    Odds odds() {
        return odds;
    }

    boolean repairToProve() {
        return repairToProve;
    }

    boolean repairProven() {
        return repairProven;
    }

    /** The likeliest suspects by now, or those that were repaired. */
    Finding finding() {
        return repaired.orElseGet(this::likeliest);
    }

    private Finding likeliest() {
        Route.Group group = route.likeliest(odds);
        return new Finding(circuit.suspects().subList(group.first(), group.last() + 1), group.probability(),
                group.probability() >= circuit.confidence());
    }

    List<Numbered> counted() {
        return List.copyOf(counted);
    }

    List<Clash> clashes() {
        List<Clash> clashes = new ArrayList<>();
        for (Numbered good : counted) {
            for (Numbered bad : counted) {
                if (point(bad) >= point(good) && verdict(good) == Verdict.GOOD && verdict(bad) == Verdict.BAD) {
                    clashes.add(new Clash(good.number(), bad.number()));
                }
            }
        }
        return clashes;
    }

    private static int point(Numbered event) {
        return ((Entry.Injected) event.entry()).place().point();
    }

    private static Verdict verdict(Numbered event) {
        return Judgement.of((Entry.Injected) event.entry()).verdict();
    }
}
