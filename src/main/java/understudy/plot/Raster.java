package understudy.plot;

import java.util.Arrays;
import java.util.List;

/**
 * A line on a grid of dots: for every column the lowest and the highest dot that the line touches there.
 * Row 0 is the bottom. Columns beside the line are empty ({@link #low} above {@link #high}).
 */
final class Raster {

    private final int[] lowest;
    private final int[] highest;

    Raster(List<LinePlot.Point> points, double fromX, double toX, double leastY, double mostY, int columns, int rows) {
        lowest = new int[columns];
        highest = new int[columns];
        Arrays.fill(lowest, rows);
        Arrays.fill(highest, -1);
        double columnsPerX = columns / (toX - fromX);
        // a flat line lies in the middle of its panel
        double rowsPerY = mostY > leastY ? (rows - 1) / (mostY - leastY) : 0;
        double middle = mostY > leastY ? 0 : (rows - 1) / 2.0;
        for (int i = 1; i < points.size(); i++) {
            touch(
                    (points.get(i - 1).x() - fromX) * columnsPerX, middle + (points.get(i - 1).y() - leastY) * rowsPerY,
                    (points.get(i).x() - fromX) * columnsPerX, middle + (points.get(i).y() - leastY) * rowsPerY);
        }
    }

    int low(int column) {
        return lowest[column];
    }

    int high(int column) {
        return highest[column];
    }

    boolean dot(int column, int row) {
        return row >= lowest[column] && row <= highest[column];
    }

    private void touch(double x0, double y0, double x1, double y1) {
        int first = Math.max(0, (int) Math.floor(x0));
        // a line that ends exactly on a column's left edge doesn't enter that column, unless it is upright
        int last = Math.min(lowest.length - 1, x1 > x0 ? (int) Math.ceil(x1) - 1 : (int) Math.floor(x1));
        for (int column = first; column <= last; column++) {
            double enter = x1 > x0 ? y0 + (y1 - y0) * (Math.max(column, x0) - x0) / (x1 - x0) : y0;
            double leave = x1 > x0 ? y0 + (y1 - y0) * (Math.min(column + 1, x1) - x0) / (x1 - x0) : y1;
            lowest[column] = Math.min(lowest[column], (int) Math.round(Math.min(enter, leave)));
            highest[column] = Math.max(highest[column], (int) Math.round(Math.max(enter, leave)));
        }
    }
}
