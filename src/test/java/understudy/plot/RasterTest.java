package understudy.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.constraints.Size;
import understudy.plot.LinePlot.Point;

class RasterTest {

    private static final int COLUMNS = 7;
    private static final int ROWS = 20;

    /** Walks along the line in small steps and notes which dots it meets: slow, but it knows no case to get wrong. */
    @Property
    void everyDotThatTheLineMeetsIsSetAndNoOther(
            @ForAll @Size(min = 2, max = 12) List<@DoubleRange(min = 0.01, max = 0.99) @Scale(6) Double> heights,
            @ForAll @DoubleRange(min = 0.05, max = 0.2) @Scale(6) double unevenness) {
        List<Point> line = line(heights, unevenness);
        Raster raster = new Raster(line, 0, COLUMNS, 0, 1, COLUMNS, ROWS);
        int[] low = new int[COLUMNS];
        int[] high = new int[COLUMNS];
        Arrays.fill(low, ROWS);
        Arrays.fill(high, -1);
        int steps = 2000;
        for (int i = 1; i < line.size(); i++) {
            for (int k = 0; k <= steps; k++) {
                double part = (double) k / steps;
                double x = line.get(i - 1).x() + part * (line.get(i).x() - line.get(i - 1).x());
                double y = line.get(i - 1).y() + part * (line.get(i).y() - line.get(i - 1).y());
                int column = (int) Math.min(COLUMNS - 1, Math.floor(x));
                low[column] = Math.min(low[column], (int) Math.round(y * (ROWS - 1)));
                high[column] = Math.max(high[column], (int) Math.round(y * (ROWS - 1)));
            }
        }
        for (int column = 0; column < COLUMNS; column++) {
            // the walk stops short of a column's border by up to one step, in which the line climbs at most
            // 19 rows / 2000, so it can miss at most the one dot whose border lies in there
            assertThat(raster.low(column)).isBetween(low[column] - 1, low[column]);
            assertThat(raster.high(column)).isBetween(high[column], high[column] + 1);
        }
    }

    /** Spread unevenly over the whole width, so that corners fall in the middle of columns and several into one. */
    private static List<Point> line(List<Double> heights, double unevenness) {
        List<Point> line = new ArrayList<>();
        int last = heights.size() - 1;
        for (int i = 0; i <= last; i++) {
            double shift = i == 0 || i == last ? 0 : unevenness * (i % 2 == 0 ? 1 : -1);
            line.add(new Point((i + shift) * COLUMNS / last, heights.get(i)));
        }
        return line;
    }
}
