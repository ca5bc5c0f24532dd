package understudy.measure;

import java.util.Arrays;
import understudy.refusal.Refused;

/**
 * The reference level instants of a recording (IEC 60469:2013): where it passes a level, between samples, each
 * transition once however noisy it is.
 *
 * <p>A transition is what lies between a high and a low turning point. A turning point stands once the signal has come
 * back by 0.3 of the last swing, so the measure grows and shrinks with the signal, as adaptive input circuits do; if the
 * signal falls away altogether, that measure halves with every 16 spans between turning points that pass. Swings
 * below a floor (twelve times the rms noise, which its peaks never span, at least 1 % of the largest swing) are none.
 * Where noise passes a level several times in one transition the middle one counts.
 *
 * @param frames when, in frames, rising; none nearer to an end than the reconstruction reaches ({@link Between#HALF})
 * @param rising whether upwards
 */
record Crossings(double[] frames, boolean[] rising) {

    private static final double COME_BACK = 0.3;
    private static final double SPANS_TO_HALVE = 16;
    private static final double LEAST_SWING = 0.01;
    private static final double NOISE_SWING = 12;
    private static final double MOST_NOISE_SWING = 0.15;

    /** Of all transitions that pass {@code level}. */
    static Crossings of(double[] volts, double level) {
        Between between = new Between(volts);
        int[] turns = turningPoints(volts);
        double[] frames = new double[turns.length];
        boolean[] rising = new boolean[turns.length];
        int count = 0;
        for (int k = 0; k + 1 < turns.length; k++) {
            int at = middlePassage(volts, turns[k], turns[k + 1], level);
            if (at < Between.HALF || at + 1 >= volts.length - Between.HALF) {
                continue;
            }
            frames[count] = between.crossing(at, level);
            rising[count++] = volts[turns[k + 1]] > volts[turns[k]];
        }
        return new Crossings(Arrays.copyOf(frames, count), Arrays.copyOf(rising, count));
    }

    /** Those in one direction. */
    Crossings only(boolean upwards) {
        double[] some = frames(upwards);
        boolean[] alike = new boolean[some.length];
        Arrays.fill(alike, upwards);
        return new Crossings(some, alike);
    }

    /** When it passed in one direction, frames. */
    double[] frames(boolean upwards) {
        double[] some = new double[frames.length];
        int count = 0;
        for (int i = 0; i < frames.length; i++) {
            if (rising[i] == upwards) {
                some[count++] = frames[i];
            }
        }
        return Arrays.copyOf(some, count);
    }

    /** The frame before the middle one of all passages from one turning point to the next; -1 if there is none. */
    private static int middlePassage(double[] volts, int from, int to, double level) {
        int passages = 0;
        for (int i = from; i < to; i++) {
            passages += volts[i] < level != volts[i + 1] < level ? 1 : 0;
        }
        // an even number begins and ends on the same side of the level
        int wanted = passages % 2 == 0 ? 0 : passages / 2 + 1;
        for (int i = from; i < to && wanted > 0; i++) {
            wanted -= volts[i] < level != volts[i + 1] < level ? 1 : 0;
            if (wanted == 0) {
                return i;
            }
        }
        return -1;
    }

    /** Frames of highs and lows in turn. */
    static int[] turningPoints(double[] volts) {
        double floor = floor(volts);
        int[] turns = new int[64];
        int count = 0;
        int high = 0;
        int low = 0;
        int sought = 0; // 1: a high, -1: a low, 0: whichever comes first
        double comeBack = 0;
        double halvesIn = 1;
        for (int i = 1; i < volts.length; i++) {
            high = volts[i] > volts[high] ? i : high;
            low = volts[i] < volts[low] ? i : low;
            int found = -1;
            double needed = count < 2
                    ? floor
                    : Math.max(floor, comeBack * Math.pow(2, (turns[count - 1] - i) / halvesIn));
            if (sought >= 0 && volts[high] - volts[i] > needed) {
                found = high;
                sought = -1;
                low = i;
            } else if (sought <= 0 && volts[i] - volts[low] > needed) {
                found = low;
                sought = 1;
                high = i;
            }
            if (found >= 0) {
                turns = count == turns.length ? Arrays.copyOf(turns, 2 * count) : turns;
                turns[count++] = found;
                if (count > 1) {
                    comeBack = COME_BACK * Math.abs(volts[turns[count - 1]] - volts[turns[count - 2]]);
                    halvesIn = SPANS_TO_HALVE * (turns[count - 1] - turns[count - 2]);
                }
            }
        }
        if (count > 0) {
            turns = Arrays.copyOf(turns, count + 1);
            turns[count++] = sought > 0 ? high : low;
        }
        return Arrays.copyOf(turns, count);
    }

    /**
     * The median low and the median high turning point: the middle between them is the middle of a swing even where
     * pulses never come to rest, or droop.
     */
    static StateLevels usualTurningPoints(double[] volts) {
        int[] turns = turningPoints(volts);
        double[] first = new double[(turns.length + 1) / 2];
        double[] second = new double[turns.length / 2];
        if (second.length == 0) {
            throw new Refused("this recording has no edges", "check that there is a signal");
        }
        for (int k = 0; k < turns.length; k++) {
            (k % 2 == 0 ? first : second)[k / 2] = volts[turns[k]];
        }
        Arrays.sort(first);
        Arrays.sort(second);
        double one = first[first.length / 2];
        double other = second[second.length / 2];
        return new StateLevels(Math.min(one, other), Math.max(one, other));
    }

    private static double floor(double[] volts) {
        double most = Arrays.stream(volts).max().orElse(0);
        double least = Arrays.stream(volts).min().orElse(0);
        double noise = Math.min(NOISE_SWING * noise(volts), MOST_NOISE_SWING * (most - least));
        return Math.max(noise, LEAST_SWING * (most - least));
    }

    /**
     * Rms noise, from the bend between three samples, which a slow signal hardly has: the median of its size, made an
     * rms as for a Gaussian (0.6745), of three independent samples weighted 1, -2, 1 (root 6). Fast signals read as
     * noise, so the use of this must be limited.
     */
    private static double noise(double[] volts) {
        // a hundred thousand are plenty for a median
        int every = Math.max(1, volts.length / 100_000);
        double[] bends = new double[(volts.length - 2 + every - 1) / every];
        for (int k = 0; k < bends.length; k++) {
            int i = 1 + k * every;
            bends[k] = Math.abs(volts[i - 1] - 2 * volts[i] + volts[i + 1]);
        }
        Arrays.sort(bends);
        return bends.length == 0 ? 0 : bends[bends.length / 2] / 0.6745 / Math.sqrt(6);
    }
}
