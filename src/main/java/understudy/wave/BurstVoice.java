package understudy.wave;

import java.util.Arrays;
import understudy.motion.Motion;
import understudy.pattern.Bursts;

/**
 * Ringing that starts at given angles and dies away, over noise. The corner at each start is smoothed by the edge
 * kernel around its exact instant.
 */
final class BurstVoice implements Voice {
    private static final int CAPACITY = 64;
    /** After so many time constants a burst is 139 dB down and forgotten. */
    private static final double LIFE_DECAYS = 16;
    private static final double PER_FRAME = 1 / Gaussian.SIGMA_FRAMES;

    private final Motion motion;
    private final Axis axis;
    private final double[] startAt;
    private final double cyclesPerFrame;
    private final double decayFrames;
    private final double perFrame;
    private final double peakVolts;
    private final double corner;
    private final double noiseVolts;
    private final Chance chance;

    private long cycle;
    private int index;
    private final double[] started = new double[CAPACITY];
    private int count;

    BurstVoice(Bursts bursts, Motion motion, Axis axis, Chance chance, int rateHz) {
        this.motion = motion;
        this.axis = axis;
        this.chance = chance;
        startAt = bursts.atDeg().stream().mapToDouble(deg -> deg / bursts.overDeg()).toArray();
        Arrays.sort(startAt);
        cyclesPerFrame = bursts.frequencyHz() / rateHz;
        decayFrames = bursts.decaySeconds() * rateHz;
        perFrame = StrictMath.exp(-1 / decayFrames);
        peakVolts = bursts.peakVolts();
        corner = peakVolts * 2 * Math.PI * cyclesPerFrame * Gaussian.SIGMA_FRAMES;
        noiseVolts = bursts.noiseVolts();
        cycle = (long) Math.floor(axis.startCycle());
    }

    @Override
    public double restVolts() {
        return 0;
    }

    @Override
    public void render(double[] out, long faultsOn) {
        axis.follow(motion);
        announce();
        for (int i = 0; i < Motion.QUANTUM; i++) {
            out[i] = noiseVolts == 0 ? 0 : noiseVolts * chance.bell(motion.startFrame() + i);
        }
        for (int k = 0; k < count; k++) {
            ring(started[k], out);
        }
        int gone = 0;
        while (gone < count && started[gone] + LIFE_DECAYS * decayFrames < Motion.QUANTUM) {
            gone++;
        }
        count -= gone;
        for (int k = 0; k < count; k++) {
            started[k] = started[k + gone] - Motion.QUANTUM;
        }
    }

    private void announce() {
        double end = axis.cyclesAt(motion.windowEndTurns());
        while (axis.cyclesPerTurn() > 0 && axis.aboveBase(cycle, startAt[index]) < end) {
            double frame = motion.frameAt(axis.turnsAt(axis.aboveBase(cycle, startAt[index])));
            // what began before the start of playing is not heard
            if (frame >= -Gaussian.REACH_FRAMES || motion.startFrame() > 0) {
                if (count == CAPACITY) {
                    System.arraycopy(started, 1, started, 0, --count);
                }
                started[count++] = frame;
            }
            if (++index == startAt.length) {
                index = 0;
                cycle++;
            }
        }
    }

    private void ring(double at, double[] out) {
        int begin = Math.max(0, (int) Math.ceil(at));
        if (begin < Motion.QUANTUM) {
            double envelope = peakVolts * StrictMath.exp(-(begin - at) / decayFrames);
            for (int n = begin; n < Motion.QUANTUM; n++) {
                out[n] += envelope * Sine.ofTurns(cyclesPerFrame * (n - at));
                envelope *= perFrame;
            }
        }
        int end = Math.min(Motion.QUANTUM, (int) Math.floor(at + Gaussian.REACH_FRAMES) + 1);
        for (int n = Math.max(0, (int) Math.ceil(at - Gaussian.REACH_FRAMES)); n < end; n++) {
            out[n] += corner * Gaussian.corner((n - at) * PER_FRAME);
        }
    }
}
