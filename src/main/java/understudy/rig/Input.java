package understudy.rig;

/** The module's input circuit, from its pins to its comparator. */
public sealed interface Input permits ReluctorInput, PulledUpInput, ResistiveInput {

    FrontEnd frontEnd();

    /** Two pins, neither of them ground. */
    boolean differential();
}
