package understudy.wave;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import understudy.pattern.Bursts;
import understudy.pattern.DrawnCycle;
import understudy.pattern.Fault;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Profile;
import understudy.pattern.Tone;
import understudy.pattern.When;

/** What holds for whatever is played: blocks leave no trace, nothing is allocated, days pass, the hand never jerks. */
class RendererTest {
    private static final int RATE = 48_000;

    /** Every kind of signal and fault at once. */
    private static Pattern everything(int positions, int missing, double pole, Optional<Profile> profile) {
        List<Output> outputs = List.of(
                new Output("hall", 1, 0, Patterns.hall(positions, missing)),
                new Output("reluctor", 0.5, 33, Patterns.reluctor(positions, missing, pole)),
                new Output("triangle", 1, -7, new Tone(Tone.Shape.TRIANGLE, Double.NaN, 3, 2, 0, 0.2)),
                new Output("square", 17.0 / 44, 5, new Tone(Tone.Shape.SQUARE, 777, Double.NaN, 2, 0, 0.2)),
                new Output("drawn", 1, 0, new DrawnCycle(720, List.of(
                        new DrawnCycle.Point(0, 0), new DrawnCycle.Point(10, 1), new DrawnCycle.Point(10, -1)))),
                new Output("bursts", 1, 0, new Bursts(6500, 0.002, 1, 720, List.of(10.0, 300.0), 0.01)));
        List<Fault> faults = new ArrayList<>();
        When now = new When(0.01, 5, 2, 0.7);
        faults.add(new Fault.MissingTooth(at(faults, "hall", now), List.of(2)));
        faults.add(new Fault.WeakTooth(at(faults, "reluctor", now), List.of(1, 3), 0.4));
        faults.add(new Fault.DisplacedTooth(at(faults, "reluctor", now), List.of(2), -0.1 * 360 / positions));
        faults.add(new Fault.RunOut(at(faults, "reluctor", When.ALWAYS), 0.3, 0.02 * 360 / positions, 40));
        faults.add(new Fault.Dropout(at(faults, "triangle", now), 100, 0.003));
        faults.add(new Fault.Flicker(at(faults, "square", When.ALWAYS), 200, 0.001));
        faults.add(new Fault.Noise(at(faults, "drawn", now), 0.05));
        faults.add(new Fault.Hum(at(faults, "drawn", When.ALWAYS), 0.1, 50));
        faults.add(new Fault.Spikes(at(faults, "drawn", When.ALWAYS), -1.5, 5e-5, 80));
        faults.add(new Fault.SwappedPolarity(at(faults, "bursts", now)));
        faults.add(new Fault.Level(at(faults, "hall", now), 0.5));
        faults.add(new Fault.Shift(at(faults, "hall", When.ALWAYS), -360.0 / positions));
        return Patterns.of(outputs, profile, faults);
    }

    private static Fault.Place at(List<Fault> sofar, String output, When when) {
        return new Fault.Place("fault " + sofar.size(), output, when, true);
    }

    private static final Optional<Profile> WILD = Optional.of(new Profile(List.of(
            new Profile.Crank(4, 0.05, 4, 0.4), new Profile.Ramp(Double.NaN, 60, 0.04), new Profile.Sweep(60, 5, 0.05),
            new Profile.Repeat(Profile.Repeat.FOREVER, List.of(new Profile.Hold(20, 0.0111), new Profile.Hold(0, 0.007))))));

    @Property(tries = 40)
    void theCutIntoBlocksLeavesNoTrace(
            @ForAll @IntRange(min = 3, max = 60) int positions,
            @ForAll @IntRange(min = 0, max = 2) int missing,
            @ForAll @DoubleRange(min = 0.15, max = 0.35) double pole,
            @ForAll @DoubleRange(min = 0, max = 100) double hz,
            @ForAll boolean profiled) {
        Pattern pattern = everything(positions, missing, pole, profiled ? WILD : Optional.empty());
        int frames = 9_000;
        double[][] whole = Patterns.render(Patterns.renderer(pattern, RATE, hz), frames, frames);
        for (int block : new int[] {1, 7, 256, 4096}) {
            double[][] cut = Patterns.render(Patterns.renderer(pattern, RATE, hz), frames, block);
            for (int c = 0; c < whole.length; c++) {
                assertThat(cut[c]).as("channel %d, blocks of %d", c, block).isEqualTo(whole[c]);
            }
        }
    }

    @Property(tries = 40)
    void nothingButNumbersWithinTheDeclaredLevelsComesOut(
            @ForAll @IntRange(min = 3, max = 60) int positions,
            @ForAll @IntRange(min = 0, max = 2) int missing,
            @ForAll @DoubleRange(min = 0, max = 130) double hz,
            @ForAll boolean profiled) {
        Pattern pattern = everything(positions, missing, 0.25, profiled ? WILD : Optional.empty());
        List<OutputFacts> facts = OutputFacts.of(pattern);
        double[][] volts = Patterns.render(Patterns.renderer(pattern, RATE, hz), 20_000, 512);
        for (int c = 0; c < volts.length; c++) {
            for (double v : volts[c]) {
                // displaced and shifted teeth may crowd together and add up: the healthy bound, and half again
                assertThat(v).isBetween(-1.5 * facts.get(c).peakVolts(), 1.5 * facts.get(c).peakVolts());
            }
        }
    }

    @Test
    void rendersWithoutAllocating() {
        Pattern pattern = everything(36, 1, 0.25, WILD);
        AtomicReference<Hand> hand = new AtomicReference<>(Renderer.startingHand(pattern));
        Renderer renderer = new Renderer(pattern, RATE, 10, hand);
        double[][] volts = new double[renderer.channels()][480];
        Hand[] moves = {
            hand.get().withSpeedHz(5), hand.get().withSpeedHz(50).withLevel(0.3), hand.get().withFault(3, false)
        };
        for (int i = 0; i < 400; i++) {
            renderer.render(volts, 480);
        }
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        // asking allocates the first time
        threads.getCurrentThreadAllocatedBytes();
        long before = threads.getCurrentThreadAllocatedBytes();
        for (int i = 0; i < 2000; i++) {
            if (i % 100 == 0) {
                hand.set(moves[i / 100 % moves.length]);
            }
            renderer.render(volts, 480);
        }
        assertThat(threads.getCurrentThreadAllocatedBytes() - before).isZero();
    }

    @Test
    void aDayOnEdgesAreWhereTheyBelong() {
        double hz = 800 / 60.0;
        Renderer renderer = Patterns.renderer(Patterns.of(Patterns.hall(60, 2)), RATE, hz);
        double[][] block = new double[1][48_000];
        for (int second = 0; second < 24 * 3600; second++) {
            renderer.render(block, RATE);
        }
        double[] volts = Patterns.render(renderer, 12_000, 12_000)[0];
        Reconstruction signal = new Reconstruction(volts);
        // 24 h are a whole number of thirds of a turn: 1 152 000 turns exactly, so tooth 1 is at frame 0 again
        int edges = 0;
        for (int edge = 0; edge < 110; edge++) {
            double at = edge / 120.0 / hz * RATE;
            if (at < 500) {
                continue;
            }
            double missNs = (signal.crossing(at, 0, 0.3) - at) / RATE * 1e9;
            assertThat(Math.abs(missNs)).isLessThan(1);
            edges++;
        }
        assertThat(edges).isGreaterThan(90);
    }

    @Test
    void theHandChangesLevelAndFaultsWithoutAJump() {
        Pattern pattern = Patterns.of(
                List.of(new Output("tone", 1, 0, new Tone(Tone.Shape.SINE, 100, Double.NaN, 2, 0, 0.5))),
                Optional.empty(),
                List.of(new Fault.SwappedPolarity(new Fault.Place("swapped", "tone", When.ALWAYS, false))));
        Hand start = Renderer.startingHand(pattern);
        AtomicReference<Hand> hand = new AtomicReference<>(start);
        Renderer renderer = new Renderer(pattern, RATE, 10, hand);
        double[][] block = new double[1][64];
        double before = 0;
        double most = 0;
        for (int i = 0; i < 600; i++) {
            hand.set(start.withLevel(i / 50 % 2 == 0 ? 1 : 0.2).withFault(0, i / 35 % 2 == 1));
            renderer.render(block, 64);
            for (double v : block[0]) {
                most = Math.max(most, Math.abs(v - before));
                before = v;
            }
        }
        // the sine's own slope, the level over 20 ms, the polarity's two volts over 5 ms
        assertThat(most).isLessThan(2 * Math.PI * 100 / RATE + 1 / (0.02 * RATE) + 2 / (0.005 * RATE));
        assertThat(most).isGreaterThan(2 * Math.PI * 100 / RATE);
    }

    @Test
    void theHandSpeedIsReachedAndTold() {
        Pattern pattern = Patterns.of(Patterns.hall(60, 2));
        AtomicReference<Hand> hand = new AtomicReference<>(Renderer.startingHand(pattern));
        Renderer renderer = new Renderer(pattern, RATE, 10, hand);
        Patterns.render(renderer, 4800, 64);
        assertThat(renderer.speedHz()).isCloseTo(10, within(1e-9));
        hand.set(hand.get().withSpeedHz(25));
        Patterns.render(renderer, 4800, 64);
        assertThat(renderer.speedHz()).isCloseTo(25, within(1e-9));
    }

    /** Guards "the same samples on every machine"; a change of this number is a change of what users have recorded. */
    @Test
    void theSameSamplesOnEveryMachine() {
        double[][] volts = Patterns.render(Patterns.renderer(everything(36, 1, 0.25, WILD), RATE, 10), 48_000, 512);
        long hash = 1;
        for (double[] channel : volts) {
            for (double v : channel) {
                hash = 31 * hash + Double.doubleToLongBits(v);
            }
        }
        assertThat(Long.toHexString(hash)).isEqualTo("619ccde2e63bf841");
    }
}
