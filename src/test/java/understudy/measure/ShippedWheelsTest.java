package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import understudy.measure.DetectedWheel.Polarity;
import understudy.pattern.Hall;
import understudy.pattern.Pattern;
import understudy.pattern.PatternLibrary;
import understudy.pattern.Profile;
import understudy.pattern.WheelSignal;
import understudy.wave.OutputFacts;
import understudy.wave.Renderer;

/** Every wheel of the shipped library, played by the engine, is found to be what its file declares. */
class ShippedWheelsTest {
    private static final int RATE = 48_000;

    static List<Arguments> wheels() {
        PatternLibrary library = PatternLibrary.open();
        List<Arguments> wheels = new ArrayList<>();
        for (String id : library.ids()) {
            Pattern pattern = library.find(id).value().orElseThrow();
            for (int c = 0; c < pattern.outputs().size(); c++) {
                if (pattern.outputs().get(c).signal() instanceof WheelSignal) {
                    wheels.add(Arguments.of(id + " " + pattern.outputs().get(c).name(), pattern, c));
                }
            }
        }
        return wheels;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("wheels")
    void isFoundAtEverySpeed(String name, Pattern pattern, int output) {
        OutputFacts facts = OutputFacts.of(pattern).get(output);
        double middling = pattern.speed().defaultHz();
        for (double hz : new double[] {middling / 4, middling, Math.min(4 * middling, pattern.speed().toHz())}) {
            // six cycles at least, so that the rhythm shows twice and more
            double seconds = Math.max(2, 8 / (hz * facts.cyclesPerTurn()));
            double[] volts = play(pattern.withProfile(Optional.empty()), output, hz, seconds);
            check(WheelDetector.detect(volts, RATE), facts, pattern, output, false, hz);
            check(WheelDetector.detect(TestWheel.negated(volts), RATE), facts, pattern, output, true, hz);
            double[] noisy = Signals.withNoise(volts, 0.01 * facts.peakVolts() * Math.min(1, hz / middling), 31);
            check(WheelDetector.detect(noisy, RATE), facts, pattern, output, false, hz);
        }
        Profile ramp = new Profile(List.of(new Profile.Ramp(middling / 2, Math.min(3 * middling, pattern.speed().toHz()), 4)));
        double[] volts = play(pattern.withProfile(Optional.of(ramp)), output, middling / 2, 4);
        check(WheelDetector.detect(volts, RATE), facts, pattern, output, false, Double.NaN);
    }

    private static void check(
            DetectedWheel wheel, OutputFacts facts, Pattern pattern, int output, boolean reversed, double hz) {
        int teeth = facts.timingEvents().size();
        boolean even = facts.intervalsDeg().stream().allMatch(deg -> Math.abs(deg - facts.intervalsDeg().get(0)) < 1);
        assertThat(wheel.eventsPerTurn()).as(wheel.inWords()).isEqualTo(even ? 0 : teeth);
        if (!Double.isNaN(hz)) {
            // part of a turn at the end, where gaps lie unevenly, counts up to a tooth in a turn too many or too few
            double tolerance = even ? 1e-3 : 0.1;
            assertThat(wheel.eventRateHz() / facts.eventRateHz(hz)).isCloseTo(1, within(tolerance));
        }
        boolean hall = ((WheelSignal) pattern.outputs().get(output).signal()).sensor() instanceof Hall;
        boolean lone = teeth == 1 && !hall;
        Polarity told = even && !lone ? Polarity.UNKNOWN : reversed ? Polarity.REVERSED : Polarity.NORMAL;
        assertThat(wheel.polarity()).as(wheel.inWords()).isEqualTo(told);
    }

    private static double[] play(Pattern pattern, int output, double hz, double seconds) {
        Renderer renderer = new Renderer(pattern, RATE, hz, new AtomicReference<>(Renderer.startingHand(pattern)));
        double[][] volts = new double[pattern.outputs().size()][(int) (seconds * RATE)];
        renderer.render(volts, volts[0].length);
        return volts[output];
    }
}
