package understudy.bench;

import java.util.Set;
import understudy.pattern.Hazard;

/** Somebody's agreement to these cautions, for signals that leave the machine or only for rehearsals. From {@link Consent}. */
public final class Clearance {

    private final Set<Hazard> hazards;
    private final boolean leaves;

    Clearance(Set<Hazard> hazards, boolean leaves) {
        this.hazards = hazards;
        this.leaves = leaves;
    }

    /** A rehearsal in which nobody can be asked needs nobody's agreement: nothing leaves the machine. */
    public static Clearance rehearsal() {
        return new Clearance(Set.of(Hazard.values()), false);
    }

    boolean covers(SignalPlan plan, boolean itLeaves) {
        return (leaves || !itLeaves) && hazards.containsAll(Consent.hazards(plan, itLeaves));
    }
}
