package understudy.trace;

import java.util.List;
import understudy.pattern.Hazard;

/** What is to be done next in a hunt. The user may inject elsewhere; nothing else can be skipped. */
public sealed interface Step {

    /** Read the cautions, and tick them. */
    record Caution(List<Hazard> hazards) implements Step {}

    /**
     * Clip on and inject.
     *
     * @param purpose  what it is to show
     * @param measured whether the pins there were measured since the clips were last moved, and found allowed
     * @param reason   why there, a sentence
     */
    record Inject(Place place, Purpose purpose, boolean measured, String reason) implements Step {}

    /** Prove what must hold before the module may be called bad. */
    record Prove(List<Proof> outstanding, double probability) implements Step {}

    /** Repair what was found. */
    record Repair(Finding finding) implements Step {}

    /** Close the job; everything was proven that can be. */
    record Close(Finding finding) implements Step {}

    /** Nothing: the job is closed. */
    record Ended() implements Step {}

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
