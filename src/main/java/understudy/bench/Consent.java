package understudy.bench;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import understudy.pattern.Hazard;
import understudy.pattern.Pattern;

/**
 * What has to be read and agreed to before a signal plays. A front end shows the cautions that are {@link #toRead},
 * asks, and gets a {@link Clearance}, without which nothing plays.
 */
public final class Consent {

    private final Agreement agreement;
    private final Set<Hazard> hazards;
    private final boolean leaves;
    private final List<Hazard> toRead;

    private Consent(Agreement agreement, List<Hazard> hazards, boolean leaves) {
        this.agreement = agreement;
        this.hazards = Set.copyOf(hazards);
        this.leaves = leaves;
        this.toRead = agreement.open(hazards, leaves);
    }

    /** @param leaves whether the signal leaves the machine; a rehearsal is an occasion of its own */
    public static Consent of(SignalPlan plan, boolean leaves, Agreement agreement) {
        return new Consent(agreement, hazards(plan, leaves), leaves);
    }

    /** What comes with this pattern's circuit first, then what comes with every circuit. */
    public static List<Hazard> hazards(Pattern pattern) {
        List<Hazard> hazards = new ArrayList<>(pattern.hazards());
        hazards.addAll(Hazard.general());
        return hazards;
    }

    /** Without a rig nothing is checked, which comes before all else. */
    static List<Hazard> hazards(SignalPlan plan, boolean leaves) {
        List<Hazard> hazards = new ArrayList<>(leaves && plan.hookups().isEmpty() ? List.of(Hazard.UNCHECKED) : List.of());
        hazards.addAll(hazards(plan.pattern()));
        return hazards;
    }

    /** Cautions that this user has not agreed to yet; once there are none, {@link #clearance} is given without asking. */
    public List<Hazard> toRead() {
        return toRead;
    }

    /** For a user who has agreed to all of it before. */
    public Clearance clearance() {
        if (!toRead.isEmpty()) {
            throw new IllegalStateException("nobody has agreed to " + toRead);
        }
        return new Clearance(hazards, leaves);
    }

    /** For somebody who agrees for this time only. */
    public Clearance agreedForNow() {
        return new Clearance(hazards, leaves);
    }

    /**
     * Keeps the yes of a person who has read the cautions.
     *
     * @throws IOException when it can't be kept; the yes holds for this time all the same, see {@link #agreedForNow}
     */
    public void keep(LocalDate day) throws IOException {
        agreement.keep(toRead, leaves, day);
    }
}
