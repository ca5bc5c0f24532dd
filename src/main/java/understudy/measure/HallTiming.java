package understudy.measure;

import java.util.function.Function;
import understudy.refusal.Refused;

/**
 * The edge timing of a two-level wheel where nobody knows its mid level exactly, because a divider scaled it, a
 * capacitor took its mean, or its pulses are too short to come to rest.
 *
 * <p>A level that is too high makes rising edges late and falling ones early. So the level is moved until both come
 * equally late on average (secant): pulses are then as wide as drawn, on average, and what remains is timing noise.
 *
 * @param levelVolts at which that is so
 * @param timing     of all edges at that level
 */
public record HallTiming(double levelVolts, EdgeTiming timing) {

    private static final int MOST_STEPS = 12;
    private static final double FIRST_STEP = 0.01;
    private static final double MOST_STEP = 0.1;
    /** Of the swing; an edge moves by about as much of its transition. */
    private static final double SETTLED = 1e-7;

    /** At a level that is known. */
    public static HallTiming at(double levelVolts, double[] volts, double rateHz,
            double[] risingTurns, double[] fallingTurns, EdgeTiming.Course course) {
        return at(levelVolts, volts, crossings -> EdgeTiming.ofBoth(crossings, rateHz, risingTurns, fallingTurns, course));
    }

    /**
     * With the level solved, starting from the middle between the usual highest and lowest point of a pulse.
     *
     * @param risingTurns  where the positive-going edges of one turn lie, in turns; a leading edge if teeth are high
     * @param fallingTurns likewise negative-going
     * @throws Refused if the edges don't follow that geometry
     */
    public static HallTiming of(
            double[] volts, double rateHz, double[] risingTurns, double[] fallingTurns, EdgeTiming.Course course) {
        SampleCheck.check(volts, rateHz, 2 * Between.HALF + 2, "a timing measurement");
        return of(volts, crossings -> EdgeTiming.ofBoth(crossings, rateHz, risingTurns, fallingTurns, course));
    }

    /** The same, against whatever tells the places of both directions' edges. */
    static HallTiming of(double[] volts, Function<Crossings, EdgeTiming> places) {
        StateLevels usual = Crossings.usualTurningPoints(volts);
        double swing = usual.amplitudeVolts();
        double before = usual.at(0.5);
        double leanBefore = lean(before, volts, places);
        double level = before + FIRST_STEP * swing;
        for (int step = 0; step < MOST_STEPS; step++) {
            double lean = lean(level, volts, places);
            double move = lean == leanBefore ? 0 : -lean * (level - before) / (lean - leanBefore);
            before = level;
            leanBefore = lean;
            level += Math.max(-MOST_STEP * swing, Math.min(MOST_STEP * swing, move));
            if (Math.abs(move) < SETTLED * swing) {
                break;
            }
        }
        return at(level, volts, places);
    }

    private static HallTiming at(double levelVolts, double[] volts, Function<Crossings, EdgeTiming> places) {
        return new HallTiming(levelVolts, places.apply(Crossings.of(volts, levelVolts)));
    }

    /** By how much rising edges come later than falling ones, seconds. */
    private static double lean(double level, double[] volts, Function<Crossings, EdgeTiming> places) {
        Crossings crossings = Crossings.of(volts, level);
        double[] misses = places.apply(crossings).missSeconds();
        double rising = 0;
        double falling = 0;
        int risings = 0;
        for (int i = 0; i < misses.length; i++) {
            if (crossings.rising()[i]) {
                rising += misses[i];
                risings++;
            } else {
                falling += misses[i];
            }
        }
        return rising / risings - falling / (misses.length - risings);
    }
}
