package understudy.pattern;

import understudy.quantity.Range;
import understudy.quantity.Unit;

/**
 * What a pattern file may ask for, both ends included: wide enough for every sensor and audio device there is, narrow
 * enough that a slip (kV for V, s for ms) is caught. patterns/README.md repeats them for people.
 */
final class FormatLimits {
    static final int MOST_OUTPUTS = 32;
    static final int MOST_POSITIONS = 1000;
    static final int MOST_POINTS = 2000;
    static final int MOST_STEPS = 1000;
    static final int MOST_FAULTS = 64; // the user's hand holds them in the bits of one long

    static final int TITLE_LETTERS = 80;
    static final int TEXT_LETTERS = 2000;
    static final int NAME_LETTERS = 40;

    static final Range PHASE = new Range(-720, 720, Unit.DEGREE);
    static final Range WIDTH = new Range(0.01, 719, Unit.DEGREE);
    static final Range PEAK_TO_PEAK = new Range(0.0001, 200, Unit.VOLT);
    static final Range PEAK = new Range(0.0001, 100, Unit.VOLT);
    static final Range VOLTS = new Range(-100, 100, Unit.VOLT);
    static final Range RMS = new Range(0, 100, Unit.VOLT);
    static final Range POLE = new Range(5, 100, Unit.PERCENT);
    static final Range RISING = new Range(0, 100, Unit.PERCENT);
    static final Range HIGH = new Range(1, 99, Unit.PERCENT);
    static final Range FREQUENCY = new Range(0.01, 200_000, Unit.HERTZ);
    static final Range DECAY = new Range(0.00001, 10, Unit.SECOND);
    static final Range ROLLS = new Range(0.1, 20, Unit.METRE);

    static final Range STEP = new Range(0.001, 1_000_000, Unit.SECOND);
    static final Range RIPPLE = new Range(0, 90, Unit.PERCENT);

    static final Range STRENGTH = new Range(0, 100, Unit.PERCENT);
    static final Range LEVEL = new Range(0, 1000, Unit.PERCENT);
    static final Range RUN_OUT = new Range(0, 99, Unit.PERCENT);
    static final Range TIMING = new Range(0, 45, Unit.DEGREE); // below 57 deg no tooth can overtake its neighbour
    static final Range DROPOUT = new Range(0.00001, 60, Unit.SECOND);
    static final Range FLICKER = new Range(0.01, 1000, Unit.HERTZ);
    static final Range HUM = new Range(1, 1000, Unit.HERTZ);
    static final Range SPIKE = new Range(0.000001, 0.01, Unit.SECOND);
    static final Range CHANCE = new Range(0.001, 100, Unit.PERCENT);
    static final Range MOMENT = new Range(0, 1_000_000, Unit.SECOND);

    private FormatLimits() {}

    /** Angles on a wheel or cycle, from 0 to {@code overDeg}. */
    static Range angle(double overDeg) {
        return new Range(0, overDeg, Unit.DEGREE);
    }
}
