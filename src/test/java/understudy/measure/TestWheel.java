package understudy.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A wheel and its motion in closed form, sampled without the engine: teeth half a pitch wide (or listed), speed steady or
 * rising linearly. Angles are turns.
 */
final class TestWheel {
    final double pitch;
    private final double[] leading;
    private final double[] trailing;

    /** Places from 0, some of them empty; each tooth's leading edge stands at its place. */
    TestWheel(int places, int... missing) {
        pitch = 1.0 / places;
        List<Integer> teeth = new ArrayList<>();
        for (int place = 0; place < places; place++) {
            boolean gone = false;
            for (int m : missing) {
                gone |= m == place;
            }
            if (!gone) {
                teeth.add(place);
            }
        }
        leading = teeth.stream().mapToDouble(place -> place * pitch).toArray();
        trailing = teeth.stream().mapToDouble(place -> (place + 0.5) * pitch).toArray();
    }

    /** Teeth one by one: leading edge and width. */
    TestWheel(double pitch, double[][] teeth) {
        this.pitch = pitch;
        leading = java.util.Arrays.stream(teeth).mapToDouble(tooth -> tooth[0]).toArray();
        trailing = java.util.Arrays.stream(teeth).mapToDouble(tooth -> tooth[0] + tooth[1]).toArray();
    }

    double[] leading() {
        return leading.clone();
    }

    double[] trailing() {
        return trailing.clone();
    }

    int teeth() {
        return leading.length;
    }

    /** Speed from f0 to f1 turns per second over the whole recording: angle and its inverse in closed form. */
    record Motion(double f0, double f1, double seconds) {
        double angle(double t) {
            return f0 * t + (f1 - f0) / seconds * t * t / 2;
        }

        double speed(double t) {
            return f0 + (f1 - f0) / seconds * t;
        }

        double when(double angle) {
            double half = (f1 - f0) / seconds / 2;
            // the form of the quadratic's root that does not cancel
            return 2 * angle / (f0 + Math.sqrt(f0 * f0 + 4 * half * angle));
        }
    }

    /** A Hall sensor: Gaussian steps of so many frames at the exact instants, teeth high. */
    double[] hall(Motion motion, double low, double high, double sigmaFrames) {
        List<Double> at = new ArrayList<>();
        double whole = motion.angle(motion.seconds());
        for (int turn = 0; turn <= whole; turn++) {
            for (int k = 0; k < leading.length; k++) {
                at.add(motion.when(turn + leading[k] + 0.3 * pitch) * Signals.RATE_HZ);
                at.add(motion.when(turn + trailing[k] + 0.3 * pitch) * Signals.RATE_HZ);
            }
        }
        double[] instants = at.stream().mapToDouble(Double::doubleValue).toArray();
        return Signals.steps((int) (motion.seconds() * Signals.RATE_HZ), instants, low, high, sigmaFrames);
    }

    /** A reluctor: slope of the flux times the speed, 1 V for a lone edge at {@code unitHz}; in normal polarity. */
    double[] reluctor(Motion motion, double polePitches, double unitHz) {
        DoubleUnaryOperator slope = fluxSlope(polePitches);
        return Signals.sampled((int) (motion.seconds() * Signals.RATE_HZ),
                t -> motion.speed(t) / unitHz * slope.applyAsDouble(motion.angle(t)));
    }

    /** Where the flux of each tooth peaks: the negative-going zero of its slope, by halving between the tooth's edges. */
    double[] crossings(double polePitches) {
        DoubleUnaryOperator slope = fluxSlope(polePitches);
        double[] at = new double[leading.length];
        for (int k = 0; k < at.length; k++) {
            double low = leading[k];
            double high = trailing[k];
            for (int i = 0; i < 60; i++) {
                double middle = (low + high) / 2;
                low = slope.applyAsDouble(middle) > 0 ? middle : low;
                high = slope.applyAsDouble(middle) > 0 ? high : middle;
            }
            at[k] = (low + high) / 2;
        }
        return at;
    }

    /** Of the flux over angle, of no particular unit: 1 for a lone edge. */
    DoubleUnaryOperator fluxSlope(double polePitches) {
        double sigma = polePitches * pitch;
        return angle -> {
            double part = angle - Math.floor(angle);
            double sum = 0;
            for (int k = 0; k < leading.length; k++) {
                for (int turn = -1; turn <= 1; turn++) {
                    double in = (part - leading[k] - turn) / sigma;
                    double out = (part - trailing[k] - turn) / sigma;
                    sum += Math.abs(in) < 9 ? Math.exp(-0.5 * in * in) : 0;
                    sum -= Math.abs(out) < 9 ? Math.exp(-0.5 * out * out) : 0;
                }
            }
            return sum;
        };
    }

    static double[] negated(double[] volts) {
        return java.util.Arrays.stream(volts).map(v -> -v).toArray();
    }
}
