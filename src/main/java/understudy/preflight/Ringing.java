package understudy.preflight;

import java.util.Arrays;

/**
 * What listens for ringing: a burst is heard when its volts first go beyond a level, either way, after they had stayed within
 * it for a whole period of the ringing.
 */
record Ringing(double leastPeakVolts, double restVolts, double periodSeconds) implements Comparator {

    @Override
    public double[] switches(double[] volts, double stepSeconds) {
        double quietSteps = periodSeconds / stepSeconds;
        double[] at = new double[64];
        int count = 0;
        double lastBeyond = Double.NEGATIVE_INFINITY;
        for (int i = 1; i < volts.length; i++) {
            double away = Math.abs(volts[i] - restVolts);
            if (away > leastPeakVolts) {
                if (i - lastBeyond > quietSteps) {
                    double before = Math.abs(volts[i - 1] - restVolts);
                    at = count == at.length ? Arrays.copyOf(at, 2 * count) : at;
                    at[count++] = i - 1 + (leastPeakVolts - before) / (away - before);
                }
                lastBeyond = i;
            }
        }
        return Arrays.copyOf(at, count);
    }

    @Override
    public Spare spare(Swing swing, Swing before, double sinceSeconds) {
        double peak = Math.min(swing.highestVolts() - restVolts, restVolts - swing.lowestVolts());
        return new Spare(peak - leastPeakVolts, Math.max(0, peak) / leastPeakVolts);
    }

    /** How often the volts rise beyond the level from one place to another. */
    int oscillations(double[] volts, int from, int to) {
        int count = 0;
        for (int i = Math.max(1, from); i <= to; i++) {
            count += volts[i] - restVolts > leastPeakVolts && volts[i - 1] - restVolts <= leastPeakVolts ? 1 : 0;
        }
        return count;
    }
}
