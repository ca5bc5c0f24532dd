package understudy.preflight;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import understudy.rig.Levels;
import understudy.rig.Use;
import understudy.rig.WorstCase;
import understudy.rig.WorstCase.Build;
import understudy.rig.WorstCase.Stores;

/**
 * The builds to be judged so that no other within the tolerances does worse. What a build changes about the signal at the
 * comparator are its swing, the voltage it swings around, the time constant of what couples and that of what filters.
 * Swing and voltage depend on each resistor, and on full scale, in one direction, so their ends are at corners: the least
 * high level, the most low one, and the opposite of both, where clamps conduct most and noise switches most. Less swing
 * goes with slow filters, more with fast ones; each of these with what couples at either end, since the droop of an
 * other coupling than the one that is undone tilts either way.
 */
final class Corners {

    private Corners() {}

    /** Without the nominal build; empty when every part is exact. */
    static List<Setup> of(Setup setup) {
        double level = Math.max(1e-6, Math.min(1, setup.askedPinVolts() / setup.mostPinVolts()));
        double high = CycleEvents.highPart(setup.output());
        double duty = setup.swapped() ? 1 - high : high;
        Use use = new Use(level, duty, duty);
        List<ToDoubleFunction<Levels>> measures = List.of(Levels::highVolts, levels -> -levels.lowVolts());
        Set<Build> builds = new LinkedHashSet<>();
        for (ToDoubleFunction<Levels> measure : measures) {
            for (int coupling : setup.isCoupled() ? new int[] {-1, 1} : new int[] {0}) {
                builds.add(least(setup, new Stores(coupling, 1), build -> measure.applyAsDouble(levels(build, use))));
                builds.add(least(setup, new Stores(coupling, -1), build -> -measure.applyAsDouble(levels(build, use))));
            }
        }
        builds.remove(setup.built()); // where all parts are exact
        List<Setup> corners = new ArrayList<>();
        builds.forEach(build -> corners.add(setup.withBuilt(build)));
        return corners;
    }

    private static Build least(Setup setup, Stores stores, ToDoubleFunction<Build> measure) {
        return WorstCase.least(setup.rig(), setup.input(), stores, measure);
    }

    private static Levels levels(Build build, Use use) {
        return build.connection().levels(use);
    }
}
