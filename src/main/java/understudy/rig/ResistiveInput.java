package understudy.rig;

/**
 * An input that is but a resistance to ground, for instance another instrument.
 *
 * @param inputOhms       from pin to ground
 * @param leastPeakVolts  what it needs at the comparator, above and below its resting voltage
 * @param frontEnd        between pin and comparator
 */
public record ResistiveInput(Spread inputOhms, double leastPeakVolts, FrontEnd frontEnd) implements Input {

    public ResistiveInput {
        Bounds.check("input resistance", inputOhms, Bounds.OHMS);
        Bounds.check("volts that the input needs", leastPeakVolts, Bounds.SWING_VOLTS);
    }

    @Override
    public boolean differential() {
        return false;
    }

    ResistiveInput settled(Pick pick) {
        return new ResistiveInput(pick.settle(inputOhms), leastPeakVolts, frontEnd.settled(pick));
    }
}
