package understudy.wave;

import java.util.ArrayList;
import java.util.List;
import understudy.pattern.Bursts;
import understudy.pattern.DrawnCycle;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Reluctor;
import understudy.pattern.Tone;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;
import understudy.pattern.WheelSignal;

/**
 * How well an output's shape fits between the samples at a rate and a speed. Edges are smoothed over a fixed number of
 * frames, so shapes that are quick against the rate lose swing; their timing does not move.
 *
 * @param output    its name
 * @param swingLeft least part, 0 to 1, of the declared swing that is left between neighbouring teeth, or of a tone
 * @param speedHz   turns per second for which that holds
 * @param rateHz    frames a second for which that holds
 * @param betterHz  lowest usual rate that leaves {@link #PLENTY}, this one if it does, or 0 when none does
 */
public record Fit(String output, double swingLeft, double speedHz, int rateHz, int betterHz) {
    /** Below this part of the swing the loss is worth a warning. */
    public static final double PLENTY = 0.9;
    /** Below this part of the swing nothing sensible is left, and the pattern is refused. */
    public static final double TOO_LITTLE = 0.05;

    private static final int[] USUAL_RATES_HZ = {44_100, 48_000, 88_200, 96_000, 176_400, 192_000};

    /** Each output of a pattern at a rate and a speed. */
    public static List<Fit> of(Pattern pattern, int rateHz, double speedHz) {
        List<Fit> fits = new ArrayList<>();
        for (Output output : pattern.outputs()) {
            double left = swingLeft(output, rateHz, speedHz);
            int better = left >= PLENTY ? rateHz : 0;
            for (int i = 0; i < USUAL_RATES_HZ.length && better == 0; i++) {
                better = swingLeft(output, USUAL_RATES_HZ[i], speedHz) >= PLENTY ? USUAL_RATES_HZ[i] : 0;
            }
            fits.add(new Fit(output.name(), left, speedHz, rateHz, better));
        }
        return fits;
    }

    /** The least part of the swing that is left of any output; quicker than {@link #of}, which also looks at other rates. */
    public static double leastSwing(Pattern pattern, int rateHz, double speedHz) {
        return pattern.outputs().stream().mapToDouble(output -> swingLeft(output, rateHz, speedHz)).min().orElseThrow();
    }

    public boolean isRefused() {
        return swingLeft < TOO_LITTLE;
    }

    public boolean isWarned() {
        return swingLeft < PLENTY;
    }

    private static double swingLeft(Output output, int rateHz, double speedHz) {
        if (output.signal() instanceof WheelSignal wheelSignal) {
            Wheel wheel = wheelSignal.wheel();
            double framesPerCycle = rateHz / (speedHz * output.ratio() * 360 / wheel.overDeg());
            return wheelSignal.sensor() instanceof Hall
                    ? ofEdges(wheel, framesPerCycle)
                    : ofFlux((Reluctor) wheelSignal.sensor(), wheel, framesPerCycle);
        } else if (output.signal() instanceof Tone tone) {
            double hz = tone.fixedFrequency() ? tone.frequencyHz() : speedHz * output.ratio() * tone.cyclesPerTurn();
            return switch (tone.shape()) {
                case SINE -> passes(hz, rateHz) ? 1 : 0;
                case TRIANGLE -> passes(hz, rateHz) ? ofTone(hz / rateHz) : 0;
                case SQUARE -> ofEdges(Shapes.oneTooth(tone.part()), rateHz / hz);
            };
        } else if (output.signal() instanceof Bursts bursts) {
            return passes(bursts.frequencyHz(), rateHz) ? 1 : 0;
        }
        double hz = speedHz * output.ratio() * 360 / ((DrawnCycle) output.signal()).overDeg();
        return passes(hz, rateHz) ? ofTone(hz / rateHz) : 0;
    }

    /** What an output's reconstruction filter passes for certain: up to 0.44 of the rate. */
    private static boolean passes(double hz, int rateHz) {
        return hz <= 0.44 * rateHz;
    }

    /** What the edge kernel leaves of a fundamental. */
    private static double ofTone(double cyclesPerFrame) {
        double w = 2 * Math.PI * cyclesPerFrame * Gaussian.SIGMA_FRAMES;
        return StrictMath.exp(-0.5 * w * w);
    }

    /** Least difference between the middle of a tooth and of a gap beside it, in parts of the full step. */
    private static double ofEdges(Wheel wheel, double framesPerCycle) {
        double perCycle = framesPerCycle / Gaussian.SIGMA_FRAMES;
        List<Tooth> teeth = wheel.teeth();
        int n = teeth.size();
        double least = 1;
        for (int i = 0; i < n; i++) {
            Tooth tooth = teeth.get(i);
            double next = i + 1 < n ? teeth.get(i + 1).leadingDeg() : teeth.get(0).leadingDeg() + wheel.overDeg();
            double high = level(wheel, tooth.centreDeg(), perCycle);
            double low = level(wheel, 0.5 * (tooth.trailingDeg() + next), perCycle);
            least = Math.min(least, high - low);
        }
        return Math.max(0, least);
    }

    private static double level(Wheel wheel, double angleDeg, double sigmasPerCycle) {
        double perDeg = sigmasPerCycle / wheel.overDeg();
        int rounds = (int) Math.min(1000, 1 + Math.ceil(Gaussian.REACH / sigmasPerCycle));
        double sum = 0;
        for (int round = -rounds; round <= rounds; round++) {
            for (Tooth tooth : wheel.teeth()) {
                double away = angleDeg - round * wheel.overDeg();
                sum += Gaussian.step((away - tooth.leadingDeg()) * perDeg)
                        - Gaussian.step((away - tooth.trailingDeg()) * perDeg);
            }
        }
        return sum;
    }

    /** What widening the pole's Gaussian to the edge kernel leaves. */
    private static double ofFlux(Reluctor reluctor, Wheel wheel, double framesPerCycle) {
        double sigma = FluxVoice.sigma(reluctor, wheel);
        double kernel = Gaussian.SIGMA_FRAMES / framesPerCycle;
        if (kernel <= sigma) {
            return 1;
        }
        if (kernel > 1) {
            return 0;
        }
        List<Double> before = new FluxShape(wheel, sigma).swings(wheel);
        List<Double> after = new FluxShape(wheel, kernel).swings(wheel);
        double least = 1;
        for (int i = 0; i < before.size(); i++) {
            least = Math.min(least, after.get(i) * (sigma / kernel) / before.get(i));
        }
        return least;
    }
}
