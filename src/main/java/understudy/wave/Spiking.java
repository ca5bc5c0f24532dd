package understudy.wave;

import understudy.motion.Motion;
import understudy.pattern.Fault;

/** Short Gaussian spikes on the line, never narrower than the edge kernel. */
final class Spiking implements Disturbance {
    /** Full width at half height of a Gaussian, in standard deviations: 2 sqrt(2 ln 2). */
    private static final double HALF_HEIGHT_WIDTH = 2 * Math.sqrt(2 * StrictMath.log(2));
    private static final int CAPACITY = 64;

    private final Switch when;
    private final Moments moments;
    private final double height;
    private final double sigmaFrames;
    private final double[] atFrame = new double[CAPACITY];
    private int count;

    Spiking(Switch when, Fault.Spikes spikes, Moments moments, int rateHz) {
        this.when = when;
        this.moments = moments;
        this.height = spikes.peakVolts() / Gaussian.PEAK;
        this.sigmaFrames = Math.max(Gaussian.SIGMA_FRAMES, spikes.seconds() * rateHz / HALF_HEIGHT_WIDTH);
    }

    @Override
    public void apply(double[] volts, Motion motion, Axis turnAxis, long faultsOn) {
        double reach = Gaussian.REACH * sigmaFrames;
        // a wide spike begins before it is foreseen; it then comes late by what it lacks, whole
        while (count < CAPACITY) {
            double frame = moments.next(when, faultsOn);
            if (Double.isNaN(frame)) {
                break;
            }
            atFrame[count++] = Math.max(frame, reach);
        }
        int gone = 0;
        for (int k = 0; k < count; k++) {
            int begin = Math.max(0, (int) Math.ceil(atFrame[k] - reach));
            int end = Math.min(Motion.QUANTUM, (int) Math.floor(atFrame[k] + reach) + 1);
            for (int n = begin; n < end; n++) {
                volts[n] += height * Gaussian.density((n - atFrame[k]) / sigmaFrames);
            }
            if (atFrame[k] + reach < Motion.QUANTUM) {
                gone = k + 1;
            }
        }
        count -= gone;
        for (int k = 0; k < count; k++) {
            atFrame[k] = atFrame[k + gone] - Motion.QUANTUM;
        }
    }
}
