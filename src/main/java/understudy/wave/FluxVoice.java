package understudy.wave;

import java.util.List;
import understudy.motion.Motion;
import understudy.pattern.Reluctor;
import understudy.pattern.Wheel;

/**
 * A reluctor: volts = -N dPhi/dt, the flux being the tooth profile smoothed by the pole piece.
 *
 * <p>The smoothed edge is a Gaussian in angle, so the slope of the flux is a sum of two bells a tooth, read at the
 * exact angle of each frame: exact at any speed, under any ramp, and free to differ from turn to turn. When a bell
 * would be narrower than the edge kernel ({@link Gaussian#SIGMA_FRAMES}) it is widened to it, of equal area, which is
 * what keeps harmonics above the Nyquist frequency 96 dB down; what swing that leaves is told by {@link Fit}.
 */
final class FluxVoice implements Voice {
    private static final int CAPACITY = 256;

    private final Motion motion;
    private final Axis axis;
    private final ToothTrain teeth;
    private final double sigma;
    private final double perSpeed;
    private final double most;

    private final double[] leading = new double[CAPACITY];
    private final double[] trailing = new double[CAPACITY];
    private final double[] strength = new double[CAPACITY];
    private int count;

    FluxVoice(Reluctor reluctor, Wheel wheel, Motion motion, Axis axis, ToothTrain teeth, int rateHz) {
        this.motion = motion;
        this.axis = axis;
        this.teeth = teeth;
        this.sigma = sigma(reluctor, wheel);
        double normalSwing = normalSwing(reluctor, wheel);
        double sign = reluctor.reversed() ? -1 : 1;
        // speeds here are cycles per frame; at atHz of the output's own turn the wheel makes atHz * 360 / over cycles
        double atCyclesPerFrame = reluctor.atHz() * 360 / wheel.overDeg() / rateHz;
        this.perSpeed = sign * reluctor.peakToPeakVolts() / normalSwing / atCyclesPerFrame;
        this.most = reluctor.ceilingVolts() / normalSwing;
    }

    /** The pole width in cycles. */
    static double sigma(Reluctor reluctor, Wheel wheel) {
        return reluctor.polePitches() * wheel.pitchDeg() / wheel.overDeg();
    }

    /** Swing of the middling tooth: that of evenly spaced ones wherever most of them are. */
    static double normalSwing(Reluctor reluctor, Wheel wheel) {
        List<Double> swings = new FluxShape(wheel, sigma(reluctor, wheel)).swings(wheel);
        return swings.stream().sorted().toList().get(swings.size() / 2);
    }

    @Override
    public double restVolts() {
        return 0;
    }

    @Override
    public void render(double[] out, long faultsOn) {
        long moved = axis.follow(motion);
        teeth.rebase(moved);
        for (int k = 0; k < count; k++) {
            leading[k] -= moved;
            trailing[k] -= moved;
        }
        double[] turns = motion.turns();
        double[] speeds = motion.turnsPerFrame();
        announce(axis.cyclesAt(turns[Motion.QUANTUM - 1]) + Gaussian.REACH * widest(speeds), faultsOn);
        int first = 0;
        for (int i = 0; i < Motion.QUANTUM; i++) {
            double at = axis.cyclesAt(turns[i]);
            double speed = axis.cyclesPerTurn() * speeds[i];
            double width = Math.max(sigma, Gaussian.SIGMA_FRAMES * speed);
            double reach = Gaussian.REACH * width;
            double perWidth = 1 / width;
            while (first < count && trailing[first] + reach <= at) {
                first++;
            }
            double sum = 0;
            for (int k = first; k < count && leading[k] - reach < at; k++) {
                sum += strength[k] * (Gaussian.density((at - leading[k]) * perWidth)
                        - Gaussian.density((at - trailing[k]) * perWidth));
            }
            out[i] = volts(speed) * (sigma * perWidth) * sum;
        }
        forget(first);
    }

    private double volts(double cyclesPerFrame) {
        double volts = perSpeed * cyclesPerFrame;
        return Math.max(-most, Math.min(most, volts));
    }

    private double widest(double[] speeds) {
        double fastest = 0;
        for (double speed : speeds) {
            fastest = Math.max(fastest, speed);
        }
        return Math.max(sigma, Gaussian.SIGMA_FRAMES * fastest * axis.cyclesPerTurn());
    }

    private void announce(double end, long faultsOn) {
        while (teeth.earliestLeading() < end) {
            teeth.next(faultsOn);
            if (teeth.strength == 0) {
                continue;
            }
            if (count == CAPACITY) {
                forget(1);
            }
            leading[count] = teeth.leadingAt;
            trailing[count] = teeth.trailingAt;
            strength[count++] = teeth.strength;
        }
    }

    private void forget(int gone) {
        if (gone == 0) {
            return;
        }
        count -= gone;
        System.arraycopy(leading, gone, leading, 0, count);
        System.arraycopy(trailing, gone, trailing, 0, count);
        System.arraycopy(strength, gone, strength, 0, count);
    }
}
