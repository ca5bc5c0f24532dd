package understudy.measure;

import java.util.Arrays;

/**
 * A two-level signal by the terms of IEC 60469:2013 (IEEE Std 181-2011): state levels, 50 % reference level instants
 * taken between samples by band-limited reconstruction, durations, 10 % to 90 % transitions, overshoot, tilt.
 *
 * <p>A pulse is from a rising to the next falling instant. What has no value (no whole period, no flat part) has a
 * {@link Statistics} with count 0. Instants within 256 frames of an end are left out.
 *
 * @param levels                 low and high state
 * @param risingSeconds          instants of positive-going transitions at 50 %, from the first sample
 * @param fallingSeconds         likewise negative-going
 * @param periodSeconds          rising to rising
 * @param cycleToCycleSeconds    differences of successive periods; its rms is the cycle-to-cycle jitter
 * @param highSeconds            pulse durations, rising to falling
 * @param lowSeconds             from falling to rising
 * @param riseSeconds            transition durations, 10 % to 90 %
 * @param fallSeconds            likewise, 90 % to 10 %
 * @param overshootPercent       of the amplitude: how far each pulse goes above the high state
 * @param undershootPercent      likewise below the low state, between pulses
 * @param tiltPercent            of the amplitude: by how much a straight line through the middle 80 % of each pulse falls
 *                               over the whole pulse; negative when it rises
 */
public record Pulses(
        StateLevels levels,
        double[] risingSeconds,
        double[] fallingSeconds,
        Statistics periodSeconds,
        Statistics cycleToCycleSeconds,
        Statistics highSeconds,
        Statistics lowSeconds,
        Statistics riseSeconds,
        Statistics fallSeconds,
        Statistics overshootPercent,
        Statistics undershootPercent,
        Statistics tiltPercent) {

    private static final int LEAST_FLAT_FRAMES = 8;

    /** With state levels found from the recording itself. */
    public static Pulses of(double[] volts, double rateHz) {
        SampleCheck.check(volts, rateHz, 2 * Between.HALF + 2, "a pulse measurement");
        return of(volts, rateHz, StateLevels.of(volts));
    }

    /** With given state levels, where pulses are too short to show them or droop hides them. */
    public static Pulses of(double[] volts, double rateHz, StateLevels levels) {
        SampleCheck.check(volts, rateHz, 2 * Between.HALF + 2, "a pulse measurement");
        Crossings middles = Crossings.of(volts, levels.at(0.5));
        double[] rising = seconds(middles.frames(true), rateHz);
        double[] falling = seconds(middles.frames(false), rateHz);
        double[] periods = Statistics.steps(rising);
        return new Pulses(
                levels,
                rising,
                falling,
                Statistics.of(periods),
                Statistics.ofSteps(periods),
                Statistics.of(durations(rising, falling)),
                Statistics.of(durations(falling, rising)),
                Statistics.of(transitions(volts, rateHz, levels, middles, true)),
                Statistics.of(transitions(volts, rateHz, levels, middles, false)),
                Statistics.of(excursions(volts, levels, middles, true)),
                Statistics.of(excursions(volts, levels, middles, false)),
                Statistics.of(tilts(volts, levels, middles)));
    }

    /** Mean share of a period spent high, 0 to 1; NaN without a whole period. */
    public double duty() {
        return highSeconds.mean() / (highSeconds.mean() + lowSeconds.mean());
    }

    private static double[] seconds(double[] frames, double rateHz) {
        return Arrays.stream(frames).map(frame -> frame / rateHz).toArray();
    }

    /** From each start to the first end after it. */
    private static double[] durations(double[] starts, double[] ends) {
        double[] durations = new double[starts.length];
        int count = 0;
        int end = 0;
        for (int i = 0; i < starts.length; i++) {
            while (end < ends.length && ends[end] <= starts[i]) {
                end++;
            }
            if (end < ends.length && (i + 1 == starts.length || ends[end] < starts[i + 1])) {
                durations[count++] = ends[end] - starts[i];
            }
        }
        return Arrays.copyOf(durations, count);
    }

    private static double[] transitions(
            double[] volts, double rateHz, StateLevels levels, Crossings middles, boolean rising) {
        Between between = new Between(volts);
        double before = levels.at(rising ? 0.1 : 0.9);
        double after = levels.at(rising ? 0.9 : 0.1);
        double[] durations = new double[middles.frames().length];
        int count = 0;
        for (int k = 0; k < durations.length; k++) {
            if (middles.rising()[k] != rising) {
                continue;
            }
            int middle = (int) middles.frames()[k];
            int first = k == 0 ? 0 : (int) middles.frames()[k - 1];
            int last = k + 1 == durations.length ? volts.length - 1 : (int) middles.frames()[k + 1] + 1;
            int from = middle;
            while (from >= first && volts[from] > before == rising) {
                from--;
            }
            int to = middle + 1;
            while (to <= last && volts[to] < after == rising) {
                to++;
            }
            if (from >= first && to <= last) {
                durations[count++] = (between.crossing(to - 1, after) - between.crossing(from, before)) / rateHz;
            }
        }
        return Arrays.copyOf(durations, count);
    }

    /** How far each stay goes beyond its state, per cent of the amplitude. */
    private static double[] excursions(double[] volts, StateLevels levels, Crossings middles, boolean high) {
        double[] excursions = new double[middles.frames().length];
        int count = 0;
        for (int k = 0; k + 1 < excursions.length; k++) {
            if (middles.rising()[k] != high) {
                continue;
            }
            double most = Double.NEGATIVE_INFINITY;
            for (int i = (int) middles.frames()[k] + 1; i <= middles.frames()[k + 1]; i++) {
                most = Math.max(most, high ? volts[i] - levels.highVolts() : levels.lowVolts() - volts[i]);
            }
            excursions[count++] = 100 * Math.max(0, most) / levels.amplitudeVolts();
        }
        return Arrays.copyOf(excursions, count);
    }

    private static double[] tilts(double[] volts, StateLevels levels, Crossings middles) {
        double[] tilts = new double[middles.frames().length];
        int count = 0;
        for (int k = 0; k + 1 < tilts.length; k++) {
            double duration = middles.frames()[k + 1] - middles.frames()[k];
            int from = (int) Math.ceil(middles.frames()[k] + 0.1 * duration);
            int to = (int) Math.floor(middles.frames()[k + 1] - 0.1 * duration);
            if (middles.rising()[k] && to - from + 1 >= LEAST_FLAT_FRAMES) {
                tilts[count++] = -100 * slopePerFrame(volts, from, to) * duration / levels.amplitudeVolts();
            }
        }
        return Arrays.copyOf(tilts, count);
    }

    private static double slopePerFrame(double[] volts, int from, int to) {
        double middle = (from + to) / 2.0;
        double moment = 0;
        double squares = 0;
        for (int i = from; i <= to; i++) {
            moment += (i - middle) * volts[i];
            squares += (i - middle) * (i - middle);
        }
        return moment / squares;
    }
}
