package understudy.measure;

import java.util.Arrays;
import understudy.measure.DetectedWheel.Polarity;
import understudy.measure.DetectedWheel.Sensor;
import understudy.refusal.Refused;

/**
 * Finds teeth, gaps, polarity and speed in the recording of a wheel, as a module's decoder would, but with instants
 * exact between the samples ({@link Between}).
 *
 * <p>Polarity of a reluctor shows in the intervals of its zero crossings: those at tooth centres leave a gap of M
 * missing teeth whole (M + 1 pitches), those of the other direction cut it in the middle (twice (M + 2) / 2). Each of
 * the latter is the mean of two of the former, so the sum of squares over a turn is larger for the right direction,
 * whatever the gaps (Jensen's inequality): by 1/2 for one missing tooth, 2 for two.
 */
public final class WheelDetector {
    /**
     * Mean over peak of the stays between crossings: 1 for a square, 2/pi = 0.64 for a sine, which reluctors on even
     * teeth come near to, less where they rest at zero. Where fast two-level signals fall below, the wheel is decoded all
     * the same, but the level is then taken to be the mean.
     */
    private static final double TWO_LEVEL_FILL = 0.66;
    /** Stays of one kind, or swings of one direction, that last this much longer than the others tell the way round. */
    private static final double LONGER = 1.5;
    /** Half of what one missing tooth makes. */
    private static final double MORE_SQUARES = 0.25;
    private static final int LEAST_EVENTS = 3;

    private WheelDetector() {}

    /**
     * Judges by the shape which sensor it is, and finds the level.
     *
     * @throws Refused if there are fewer than 3 events of a kind
     */
    public static DetectedWheel detect(double[] volts, double rateHz) {
        check(volts, rateHz);
        return detect(volts, rateHz, sensor(volts, Crossings.usualTurningPoints(volts).at(0.5)));
    }

    /** A gap is as whole to rising as to falling edges of two levels, but not to a coil; even rows show by their shape. */
    private static Sensor sensor(double[] volts, double level) {
        Crossings crossings = Crossings.of(volts, level);
        Rhythm onRising = Rhythm.of(crossings.frames(true));
        Rhythm onFalling = Rhythm.of(crossings.frames(false));
        boolean twoLevel = onRising.places() > 0 && onRising.places() == onFalling.places()
                ? Math.abs(squares(onFalling) - squares(onRising)) < MORE_SQUARES
                : fill(volts, crossings, level) > TWO_LEVEL_FILL;
        return twoLevel ? Sensor.TWO_LEVEL : Sensor.RELUCTOR;
    }

    /** Finds the level: the middle of the usual swing, or the mean over whole turns, which a coil cannot have. */
    public static DetectedWheel detect(double[] volts, double rateHz, Sensor sensor) {
        check(volts, rateHz);
        if (sensor == Sensor.TWO_LEVEL) {
            return detect(volts, rateHz, sensor, Crossings.usualTurningPoints(volts).at(0.5));
        }
        double mean = Arrays.stream(volts).average().orElseThrow();
        DetectedWheel first = detect(volts, rateHz, sensor, mean);
        return detect(volts, rateHz, sensor, meanOverTurns(volts, rateHz, first));
    }

    /** With both known, as when the signal is our own. */
    public static DetectedWheel detect(double[] volts, double rateHz, Sensor sensor, double levelVolts) {
        check(volts, rateHz);
        Crossings crossings = Crossings.of(volts, levelVolts);
        double[] rising = seconds(crossings, true, rateHz);
        double[] falling = seconds(crossings, false, rateHz);
        if (Math.max(rising.length, falling.length) < LEAST_EVENTS) {
            throw new Refused("only " + Math.max(rising.length, falling.length)
                    + " events in this recording of " + SampleCheck.seconds(volts.length / rateHz)
                    + ", at least " + LEAST_EVENTS + " are needed", "record longer, or check the cable and the level");
        }
        Rhythm onRising = Rhythm.of(rising);
        Rhythm onFalling = Rhythm.of(falling);
        Polarity polarity = sensor == Sensor.TWO_LEVEL
                ? byLongestStay(crossings, onRising, onFalling)
                : byWholeGap(volts, onRising, onFalling);
        boolean upwards = (polarity == Polarity.REVERSED) == (sensor == Sensor.RELUCTOR);
        return upwards
                ? DetectedWheel.of(sensor, polarity, levelVolts, rising, onRising)
                : DetectedWheel.of(sensor, polarity, levelVolts, falling, onFalling);
    }

    private static void check(double[] volts, double rateHz) {
        SampleCheck.check(volts, rateHz, 2 * Between.HALF + 2, "a wheel measurement");
    }

    private static double[] seconds(Crossings crossings, boolean upwards, double rateHz) {
        return Arrays.stream(crossings.frames(upwards)).map(frame -> frame / rateHz).toArray();
    }

    private static double fill(double[] volts, Crossings crossings, double level) {
        double[] at = crossings.frames();
        double area = 0;
        double most = 0;
        for (int k = 0; k + 1 < at.length; k++) {
            double peak = 0;
            int from = (int) at[k] + 1;
            int to = (int) at[k + 1];
            for (int i = from; i <= to; i++) {
                area += Math.abs(volts[i] - level);
                peak = Math.max(peak, Math.abs(volts[i] - level));
            }
            most += peak * (to - from + 1);
        }
        return most == 0 ? 0 : area / most;
    }

    /** The mean between two instants as many whole turns apart as there are; even rings turn with every tooth. */
    private static double meanOverTurns(double[] volts, double rateHz, DetectedWheel wheel) {
        int perTurn = Math.max(1, wheel.eventsPerTurn());
        double[] instants = wheel.instantsSeconds();
        int last = (instants.length - 1) / perTurn * perTurn;
        if (last == 0) {
            return wheel.levelVolts();
        }
        // the signal is at its level at both ends, so parts of a sample there don't count
        int from = (int) Math.ceil(instants[0] * rateHz);
        int to = (int) Math.floor(instants[last] * rateHz);
        double sum = 0;
        for (int i = from; i <= to; i++) {
            sum += volts[i] - wheel.levelVolts();
        }
        return wheel.levelVolts() + sum / ((instants[last] - instants[0]) * rateHz);
    }

    /** Two levels: a gap is one long stay at the level that no tooth has. */
    private static Polarity byLongestStay(Crossings crossings, Rhythm onRising, Rhythm onFalling) {
        if (onRising.events() == 0 || onFalling.events() == 0 || onRising.places() == 0) {
            return Polarity.UNKNOWN;
        }
        // against the neighbours on both sides, so that a change of speed does not pass for a gap
        double longestHigh = 0;
        double longestLow = 0;
        double[] at = crossings.frames();
        for (int k = 2; k + 3 < at.length; k++) {
            double stay = (at[k + 1] - at[k]) / Math.min(at[k - 1] - at[k - 2], at[k + 3] - at[k + 2]);
            if (crossings.rising()[k]) {
                longestHigh = Math.max(longestHigh, stay);
            } else {
                longestLow = Math.max(longestLow, stay);
            }
        }
        if (Math.max(longestHigh, longestLow) < LONGER * Math.min(longestHigh, longestLow)) {
            return Polarity.UNKNOWN;
        }
        return longestLow > longestHigh ? Polarity.NORMAL : Polarity.REVERSED;
    }

    /** A reluctor: the direction that leaves gaps whole is the one at teeth; of lone lobes, the quick one. */
    private static Polarity byWholeGap(double[] volts, Rhythm onRising, Rhythm onFalling) {
        if (onRising.events() > 0 && onRising.events() == onFalling.events()) {
            double more = squares(onFalling) - squares(onRising);
            if (Math.abs(more) > MORE_SQUARES) {
                return more > 0 ? Polarity.NORMAL : Polarity.REVERSED;
            }
        }
        int[] turns = Crossings.turningPoints(volts);
        double up = usualSwingFrames(volts, turns, true);
        double down = usualSwingFrames(volts, turns, false);
        if (Math.max(up, down) > LONGER * Math.min(up, down)) {
            return down < up ? Polarity.NORMAL : Polarity.REVERSED;
        }
        return Polarity.UNKNOWN;
    }

    private static double squares(Rhythm rhythm) {
        return Arrays.stream(rhythm.intervals()).map(pitches -> pitches * pitches).sum();
    }

    /** How long swings from turning point to turning point last in one direction: the median. */
    private static double usualSwingFrames(double[] volts, int[] turns, boolean upwards) {
        double[] frames = new double[turns.length];
        int count = 0;
        for (int k = 0; k + 1 < turns.length; k++) {
            if (volts[turns[k + 1]] > volts[turns[k]] == upwards) {
                frames[count++] = turns[k + 1] - turns[k];
            }
        }
        Arrays.sort(frames, 0, count);
        return count == 0 ? 0 : frames[count / 2];
    }
}
