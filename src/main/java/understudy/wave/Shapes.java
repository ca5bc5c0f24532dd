package understudy.wave;

import java.util.List;
import understudy.pattern.DrawnCycle;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;

/** Plain tones told as what the engine already knows: a square is a wheel of one tooth, a triangle a drawn cycle. */
final class Shapes {
    private static final double CYCLE_DEG = 360;

    private Shapes() {}

    static Wheel oneTooth(double high) {
        return new Wheel(CYCLE_DEG, CYCLE_DEG, List.of(new Tooth(1, 0, high * CYCLE_DEG)));
    }

    /** Rises from low to high over the part {@code rising} of the cycle; 0 and 1 are ramps with one step. */
    static DrawnCycle triangle(double low, double high, double rising) {
        return new DrawnCycle(CYCLE_DEG, List.of(
                new DrawnCycle.Point(0, low), new DrawnCycle.Point(rising * CYCLE_DEG, high)));
    }
}
