package understudy.pattern;

import java.util.List;

/**
 * One cycle drawn by hand: straight lines between its points, closed from the last back to the first. Two points at
 * the same angle make a step.
 *
 * @param overDeg degrees after which it repeats, of the output's own turn
 * @param points  by angle, from 0 up to less than {@code overDeg} (or equal to it, to draw the end of the cycle)
 */
public record DrawnCycle(double overDeg, List<Point> points) implements Signal {

    public record Point(double angleDeg, double volts) {}

    public DrawnCycle {
        points = List.copyOf(points);
        if (!(overDeg > 0) || points.size() < 2) {
            throw new IllegalArgumentException("a drawn cycle needs a span and at least two points");
        }
    }
}
