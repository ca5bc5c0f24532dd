package understudy.trace;

/**
 * Something that may be the one bad thing. An injection at point i reads good if the fault lies with a suspect of index i
 * or less, for then the way from there to the module is sound.
 *
 * @param index 0 is the sensor's side, then the segments in their order, the last is the module
 * @param side  what it is
 * @param name  in words, to be put into a sentence
 * @param odds  before anything is measured, against the others
 */
public record Suspect(int index, Side side, String name, double odds) {

    /** What a suspect can be. */
    public enum Side { SENSOR, SEGMENT, MODULE }
}
