package understudy.trace;

import java.util.List;
import java.util.Optional;
import understudy.pattern.Hazard;
import understudy.reading.Expected;

/** One thing that happened in a job. Entries are only ever added; what was wrong is withdrawn by another entry. */
public sealed interface Entry {

    /** The cautions were read and ticked. */
    record Cautioned(List<Hazard> hazards) implements Entry {
        public Cautioned {
            hazards = List.copyOf(hazards);
        }
    }

    /**
     * The pins were measured before clipping on.
     *
     * @param volts against ground, the worse of two pins; without the rig's signal
     */
    record PinMeasured(Place place, double volts) implements Entry {}

    /**
     * A signal was played and the display was read.
     *
     * @param speedHz     turns per second of the pattern
     * @param frequencyHz of the signal, as the module counts it
     * @param levelPart   of the pattern's level; above 0
     * @param expected    what the display should have shown
     * @param clipPart    volts that were measured at the clips while it played, as a part of what they should be
     * @param moved       index of the suspect that was moved when the display came and went
     */
    record Injected(Place place, double speedHz, double frequencyHz, double levelPart, Expected expected, Answer answer,
            Optional<Double> clipPart, Optional<Integer> moved) implements Entry {}

    /** The reference circuit was not there, or did not read as it should, and the user goes on without its proof. */
    record WentOn(String reason) implements Entry {}

    /** One of the things that must hold before the module may be called bad; how it was found. */
    record Proven(Proof proof, String how) implements Entry {}

    /** An earlier entry does not count. */
    record Withdrawn(int number, String reason) implements Entry {}

    /** Whatever should be kept with the job. */
    record Noted(String words) implements Entry {}

    /**
     * Something that was written down of the job is set right; what stood there before stays in the record.
     *
     * @param was   what stood there
     * @param words what stands there from now on; may be empty
     */
    record Corrected(Detail detail, String was, String words) implements Entry {}

    /** What was repaired. */
    record Repaired(String words) implements Entry {}

    /** The end. @param ownSensorWorks whether the display works with the vehicle's own sensor again, if that was tried */
    record Closed(String words, Optional<Boolean> ownSensorWorks) implements Entry {}
}
