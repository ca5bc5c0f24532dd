package understudy.plot;

import java.util.List;

/**
 * What is to be drawn: panels one above the other over one shared x axis. Pure data, no word about pixels.
 *
 * @param title  one line above all panels
 * @param xLabel name and unit of the shared axis
 * @param fromX  left end of the axis
 * @param toX    right end, above {@code fromX}
 * @param panels from top to bottom, at least one
 * @param byDecades every decade of x takes the same width; then {@code fromX} is above 0
 */
public record LinePlot(String title, String xLabel, double fromX, double toX, List<Panel> panels, boolean byDecades) {

    /** With an even axis. */
    public LinePlot(String title, String xLabel, double fromX, double toX, List<Panel> panels) {
        this(title, xLabel, fromX, toX, panels, false);
    }

    /** One place the line passes through; both finite, in the units of the labels. */
    public record Point(double x, double y) {
        public Point {
            if (!Double.isFinite(x) || !Double.isFinite(y)) {
                throw new IllegalArgumentException("a point must be finite, got " + x + ", " + y);
            }
        }
    }

    /**
     * One line in a frame of its own.
     *
     * @param name   what the line is
     * @param yLabel unit of its upright axis
     * @param points at least two, in ascending x (equal x makes an upright step)
     * @param leastSpan that the upright axis shows, so that what is no difference does not look like one; 0 if any will do
     */
    public record Panel(String name, String yLabel, List<Point> points, double leastSpan) {

        /** As large as the line is high. */
        public Panel(String name, String yLabel, List<Point> points) {
            this(name, yLabel, points, 0);
        }

        public Panel {
            points = List.copyOf(points);
            if (points.size() < 2) {
                throw new IllegalArgumentException("a line needs at least two points: " + name);
            }
            for (int i = 1; i < points.size(); i++) {
                if (points.get(i).x() < points.get(i - 1).x()) {
                    throw new IllegalArgumentException("the points of a line must go from left to right: " + name);
                }
            }
        }

        /** Where the upright axis begins. */
        double leastY() {
            return lowest() - lacking() / 2;
        }

        /** Where it ends. */
        double mostY() {
            return highest() + lacking() / 2;
        }

        private double lacking() {
            return Math.max(0, leastSpan - (highest() - lowest()));
        }

        private double lowest() {
            return points.stream().mapToDouble(Point::y).min().orElseThrow();
        }

        private double highest() {
            return points.stream().mapToDouble(Point::y).max().orElseThrow();
        }
    }

    public LinePlot {
        panels = List.copyOf(panels);
        if (panels.isEmpty()) {
            throw new IllegalArgumentException("a plot needs at least one panel");
        }
        if (!(fromX < toX) || !Double.isFinite(toX - fromX)) {
            throw new IllegalArgumentException("the axis must go from less to more, got " + fromX + " to " + toX);
        }
        if (byDecades && !(fromX > 0)) {
            throw new IllegalArgumentException("decades begin above 0, got " + fromX);
        }
    }
}
