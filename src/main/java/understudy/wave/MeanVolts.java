package understudy.wave;

import java.util.List;
import understudy.pattern.DrawnCycle;
import understudy.pattern.DrawnCycle.Point;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Signal;
import understudy.pattern.Tone;
import understudy.pattern.Tooth;
import understudy.pattern.WheelSignal;

/** What a healthy output averages over a whole cycle, in volts, in closed form: what no capacitor passes. */
public final class MeanVolts {

    private MeanVolts() {}

    public static double of(Output output) {
        Signal signal = output.signal();
        if (signal instanceof WheelSignal wheel && wheel.sensor() instanceof Hall hall) {
            double toothDeg = wheel.wheel().teeth().stream().mapToDouble(MeanVolts::widthDeg).sum();
            return hall.lowVolts() + (hall.highVolts() - hall.lowVolts()) * toothDeg / wheel.wheel().overDeg();
        } else if (signal instanceof Tone tone) {
            double high = tone.shape() == Tone.Shape.SQUARE ? tone.part() : 0.5;
            return tone.offsetVolts() + tone.peakToPeakVolts() * (high - 0.5);
        } else if (signal instanceof DrawnCycle drawn) {
            return of(drawn);
        }
        return 0; // a reluctor's coil has no direct voltage, and bursts ring around zero
    }

    private static double widthDeg(Tooth tooth) {
        return tooth.trailingDeg() - tooth.leadingDeg();
    }

    /** Straight lines from point to point, and from the last to the first of the next cycle. */
    private static double of(DrawnCycle drawn) {
        List<Point> points = drawn.points();
        double area = 0;
        for (int i = 0; i < points.size(); i++) {
            Point from = points.get(i);
            Point to = points.get((i + 1) % points.size());
            double degrees = to.angleDeg() - from.angleDeg() + (i + 1 == points.size() ? drawn.overDeg() : 0);
            area += (from.volts() + to.volts()) / 2 * degrees;
        }
        return area / drawn.overDeg();
    }
}
