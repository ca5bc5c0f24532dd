package understudy.wave;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;

/**
 * The flux of a healthy wheel under a pole piece, in closed form: every tooth's edge smoothed by a Gaussian. Its slope
 * in angle is what a reluctor turns into volts. Positions are cycles; the slope is told per pole width, so that one
 * lone edge peaks at 1 / sqrt(2 pi).
 */
final class FluxShape {
    private final double[] leading;
    private final double[] trailing;
    private final double sigma;

    /** @param sigma standard deviation of the pole piece, cycles */
    FluxShape(Wheel wheel, double sigma) {
        this.sigma = sigma;
        // neighbours across the ends of the cycle, as many times round as the pole piece reaches
        int rounds = 1 + (int) Math.ceil(Gaussian.REACH * sigma + 1);
        int n = wheel.teeth().size();
        leading = new double[n * (2 * rounds + 1)];
        trailing = new double[leading.length];
        int k = 0;
        for (int round = -rounds; round <= rounds; round++) {
            for (Tooth tooth : wheel.teeth()) {
                leading[k] = round + tooth.leadingDeg() / wheel.overDeg();
                trailing[k++] = round + tooth.trailingDeg() / wheel.overDeg();
            }
        }
    }

    /** Slope of the flux; positive while a tooth approaches. */
    double slope(double cycles) {
        double sum = 0;
        int first = Arrays.binarySearch(trailing, cycles - Gaussian.REACH * sigma);
        for (int k = first < 0 ? -first - 1 : first; k < leading.length; k++) {
            if (leading[k] > cycles + Gaussian.REACH * sigma) {
                break;
            }
            sum += Gaussian.density((cycles - leading[k]) / sigma) - Gaussian.density((cycles - trailing[k]) / sigma);
        }
        return sum;
    }

    /** Where the slope goes through zero, negative-going, between a tooth's edges; its centre if it does not. */
    double crossingOf(double leadingCycles, double trailingCycles) {
        double low = leadingCycles;
        double high = trailingCycles;
        if (!(slope(low) > 0 && slope(high) < 0)) {
            return 0.5 * (low + high);
        }
        // halving until neighbouring doubles: slow, sure, and only done when planning
        for (int i = 0; i < 60; i++) {
            double middle = 0.5 * (low + high);
            if (slope(middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    /** Swing of each tooth: from its highest slope before to its lowest after, within a pitch around it. */
    List<Double> swings(Wheel wheel) {
        List<Double> all = new ArrayList<>();
        double pitch = wheel.pitchDeg() / wheel.overDeg();
        for (Tooth tooth : wheel.teeth()) {
            double centre = tooth.centreDeg() / wheel.overDeg();
            double reach = Math.max(0.5 * pitch, 0.5 * tooth.widthDeg() / wheel.overDeg());
            all.add(extreme(centre - reach, centre) + extreme(centre, centre + reach));
        }
        return all;
    }

    /** Largest magnitude anywhere on the wheel. */
    double peak() {
        return extreme(0, 1);
    }

    private double extreme(double from, double to) {
        // a twentieth of sigma apart: a peak of curvature 1/sigma^2 is met within 0.03 %, then a parabola does the rest
        int steps = Math.max(8, (int) Math.ceil((to - from) / sigma * 20));
        double step = (to - from) / steps;
        double most = 0;
        for (int i = 0; i <= steps; i++) {
            double at = from + i * step;
            double here = Math.abs(slope(at));
            double before = Math.abs(slope(at - step));
            double after = Math.abs(slope(at + step));
            if (here >= before && here >= after) {
                double bend = before - 2 * here + after;
                double top = bend < 0 ? here - (after - before) * (after - before) / (8 * bend) : here;
                most = Math.max(most, i == 0 || i == steps ? here : top);
            }
            most = Math.max(most, here);
        }
        return most;
    }
}
