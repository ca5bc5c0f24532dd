package understudy.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import understudy.bench.SignalPlan;
import understudy.pattern.Pattern;
import understudy.plot.LinePlot;
import understudy.wave.OutputFacts;
import understudy.wave.Renderer;

/** Draws what a pattern plays while the slowest of its outputs goes through its cycle once. */
public final class OneCycle {

    /** Fewer would show corners where there are none. */
    private static final int LEAST_FRAMES = 1500;
    /** Of slow signals; they lose nothing that could be seen, and the drawing stays quick. */
    private static final int MOST_FRAMES = 4_000_000;
    /** A turn takes nearly three hours. */
    private static final double SLOWEST_HZ = 1e-4;
    /** More than the pixels of a picture; beyond it neighbours are drawn as their lowest and highest. */
    private static final int MOST_POINTS = 3000;
    private static final int MOST_TURNS = 4;

    private OneCycle() {}

    /** Empty where nearly nothing moves, so that there is no cycle to draw. */
    public static Optional<LinePlot> plot(Pattern pattern, double speedHz) {
        if (speedHz < SLOWEST_HZ) {
            return Optional.empty();
        }
        int turns = turns(pattern);
        int rateHz = SignalPlan.DEFAULT_RATE_HZ;
        while (turns / speedHz * rateHz < LEAST_FRAMES) {
            rateHz *= 2;
        }
        while (turns / speedHz * rateHz > MOST_FRAMES) {
            rateHz /= 2;
        }
        int frames = (int) Math.ceil(turns / speedHz * rateHz) + 1;
        Renderer renderer = new Renderer(pattern.withProfile(Optional.empty()), rateHz, speedHz,
                new AtomicReference<>(Renderer.startingHand(pattern)));
        double[][] volts = new double[renderer.channels()][frames];
        renderer.render(volts, frames);
        List<LinePlot.Panel> panels = new ArrayList<>();
        for (int i = 0; i < volts.length; i++) {
            double degreesPerFrame = 360 * speedHz / rateHz;
            panels.add(new LinePlot.Panel(pattern.outputs().get(i).name(), "V", points(volts[i], degreesPerFrame)));
        }
        String title = pattern.title() + ", at " + pattern.speed().print(speedHz);
        return Optional.of(new LinePlot(title, "turn of the speed, degrees", 0, 360.0 * turns, panels));
    }

    /** Whole turns that hold the longest cycle; a cycle a little over one turn counts as one. */
    private static int turns(Pattern pattern) {
        double longest = OutputFacts.of(pattern).stream().mapToDouble(OutputFacts::cyclesPerTurn)
                .filter(cycles -> cycles > 0).map(cycles -> 1 / cycles).max().orElse(1);
        return (int) Math.max(1, Math.min(MOST_TURNS, Math.round(longest)));
    }

    private static List<LinePlot.Point> points(double[] volts, double degreesPerFrame) {
        int bundle = 1 + 2 * (volts.length - 1) / MOST_POINTS;
        List<LinePlot.Point> points = new ArrayList<>();
        for (int start = 0; start < volts.length; start += bundle) {
            int lowest = start;
            int highest = start;
            for (int i = start; i < Math.min(volts.length, start + bundle); i++) {
                lowest = volts[i] < volts[lowest] ? i : lowest;
                highest = volts[i] > volts[highest] ? i : highest;
            }
            points.add(point(volts, Math.min(lowest, highest), degreesPerFrame));
            if (lowest != highest) {
                points.add(point(volts, Math.max(lowest, highest), degreesPerFrame));
            }
        }
        return points;
    }

    private static LinePlot.Point point(double[] volts, int frame, double degreesPerFrame) {
        return new LinePlot.Point(frame * degreesPerFrame, volts[frame]);
    }
}
