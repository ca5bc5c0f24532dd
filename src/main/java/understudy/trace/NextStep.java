package understudy.trace;

import java.util.List;
import understudy.pattern.Hazard;

/** What is to be done next in a hunt. The user may inject elsewhere; nothing else can be skipped. */
public sealed interface NextStep {

    /** Read the cautions, and tick them. */
    record Caution(List<Hazard> hazards) implements NextStep {}

    /**
     * Clip on and inject.
     *
     * @param purpose  what it is to show
     * @param measured whether the pins there were measured since the clips were last moved, and found allowed
     * @param reason   why there, a sentence
     */
    record Inject(Place place, Purpose purpose, boolean measured, String reason) implements NextStep {}

    /** Prove what must hold before the module may be called bad. */
    record Prove(List<Proof> outstanding, double probability) implements NextStep {}

    /** Repair what was found. */
    record Repair(Finding finding) implements NextStep {}

    /** Close the job; everything was proven that can be. */
    record Close(Finding finding) implements NextStep {}

    /** Nothing: the job is closed. */
    record Ended() implements NextStep {}

    /** What an injection is to show. */
    enum Purpose {
        /** That rig and method work: on a circuit that works. */
        METHOD,
        /** Where the fault is. */
        HUNT,
        /** That the repair holds. */
        REPAIR
    }
}
