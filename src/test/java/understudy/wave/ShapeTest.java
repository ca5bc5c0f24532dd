package understudy.wave;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.pattern.Bursts;
import understudy.pattern.DrawnCycle;
import understudy.pattern.Signal;
import understudy.pattern.Tone;

/** Tones, drawn cycles and bursts against brute force: the ideal shape convolved with the edge kernel by quadrature. */
class ShapeTest {
    private static final int RATE = 48_000;
    private static final double SIGMA = 1.5;

    /**
     * Convolution with a Gaussian of 1.5 frames at one instant, midpoint rule in steps of 1/2000 of a frame: for a
     * shape with corners of slope change below 1 V a frame the error is below 1e-7, for steps of 3 V below 3e-4 of a
     * step's share, so instants of steps are kept on the grid's own lines.
     */
    private static double smoothed(DoubleUnaryOperator shape, double frame) {
        double sum = 0;
        double weight = 0;
        double step = 1.0 / 500;
        for (double x = -9 + step / 2; x < 9; x += step) {
            double w = Math.exp(-x * x / (2 * SIGMA * SIGMA));
            sum += w * shape.applyAsDouble(frame - x);
            weight += w;
        }
        return sum / weight;
    }

    private static double[] play(Signal signal, double hz, int frames) {
        return Patterns.render(Patterns.renderer(Patterns.of(signal), RATE, hz), frames, 77)[0];
    }

    private static double fraction(double x) {
        return x - Math.floor(x);
    }

    @ParameterizedTest
    @CsvSource({"0.5, 997", "0.1, 1333", "0.9, 40", "0, 500", "1, 500", "0.5, 5000", "0, 4000"})
    void trianglesHaveSmoothedCorners(double rising, double hz) {
        double[] volts = play(new Tone(Tone.Shape.TRIANGLE, Double.NaN, 1, 2, 0.25, rising), hz, 400);
        DoubleUnaryOperator ideal = frame -> {
            double phase = fraction(frame * hz / RATE);
            return 0.25 + (phase < rising ? -1 + 2 * phase / rising : 1 - 2 * (phase - rising) / (1 - rising));
        };
        for (int n = 20; n < volts.length; n++) {
            // the quadrature sees a step of 2 V up to half of its own step of 1/500 frame wrong: 2 * 0.27 / 1000
            double tolerance = rising == 0 || rising == 1 ? 6e-4 : 1e-6;
            assertThat(volts[n]).isCloseTo(smoothed(ideal, n), within(tolerance));
        }
    }

    @Test
    void aDrawnCycleGoesThroughItsPointsWithStepsWhereTwoShareAnAngle() {
        DrawnCycle drawn = new DrawnCycle(720, List.of(
                new DrawnCycle.Point(0, 0), new DrawnCycle.Point(90, 1), new DrawnCycle.Point(90, -1),
                new DrawnCycle.Point(300, 0.5), new DrawnCycle.Point(540, 0.5)));
        double hz = 300;
        double[] volts = play(drawn, hz, 1000);
        DoubleUnaryOperator ideal = frame -> {
            double deg = 720 * fraction(frame * hz / RATE / 2);
            return deg < 90 ? deg / 90
                    : deg < 300 ? -1 + 1.5 * (deg - 90) / 210
                    : deg < 540 ? 0.5
                    : 0.5 - 0.5 * (deg - 540) / 180;
        };
        for (int n = 20; n < volts.length; n++) {
            assertThat(volts[n]).isCloseTo(smoothed(ideal, n), within(6e-4));
        }
    }

    @Test
    void aSineIsASine() {
        double[] tied = play(new Tone(Tone.Shape.SINE, Double.NaN, 1, 2.4, 0.1, 0.5), 997.3, 2000);
        double[] fixed = play(new Tone(Tone.Shape.SINE, 12_345.6, Double.NaN, 2.4, 0.1, 0.5), 10, 2000);
        for (int n = 0; n < tied.length; n++) {
            // argument of up to 3000 radians rounded to 4e-13
            assertThat(tied[n]).isCloseTo(0.1 + 1.2 * Math.sin(2 * Math.PI * 997.3 * n / RATE), within(1e-11));
            assertThat(fixed[n]).isCloseTo(0.1 + 1.2 * Math.sin(2 * Math.PI * 12_345.6 * n / RATE), within(1e-11));
        }
    }

    @ParameterizedTest
    @CsvSource({"0.5, 1000", "0.1, 333.3", "0.75, 3000"})
    void aSquareCrossesItsMiddleAtItsDuty(double high, double hz) {
        double[] volts = play(new Tone(Tone.Shape.SQUARE, hz, Double.NaN, 2, 0.3, high), 10, 10_000);
        Reconstruction signal = new Reconstruction(volts);
        for (int cycle = (int) (600 * hz / RATE) + 1; cycle < 9000 * hz / RATE; cycle++) {
            // what aliases past the kernel: -96 dB of 2 V against a slope of 0.5 V a frame, some 1e-5 frames at worst
            double up = cycle / hz * RATE;
            double down = (cycle + high) / hz * RATE;
            assertThat(signal.crossing(up, 0.3, 0.4)).isCloseTo(up, within(1.2e-5));
            assertThat(signal.crossing(down, 0.3, 0.4)).isCloseTo(down, within(1.2e-5));
        }
    }

    @Test
    void burstsRingAndDieAwayFromTheirExactAngles() {
        Bursts bursts = new Bursts(6500, 0.0008, 1, 720, List.of(30.0, 390.0), 0);
        double hz = 50;
        double[] volts = play(bursts, hz, 4000);
        for (int n = 0; n < volts.length; n++) {
            double truth = 0;
            boolean nearStart = false;
            for (int k = 0; k < 6; k++) {
                double start = (30 + 360 * k) / 360.0 / hz * RATE;
                double t = (n - start) / RATE;
                nearStart |= Math.abs(n - start) < 9.1;
                truth += t > 0 ? Math.exp(-t / 0.0008) * Math.sin(2 * Math.PI * 6500 * t) : 0;
            }
            if (!nearStart) {
                // each burst is forgotten after 16 time constants, at 1.1e-7
                assertThat(volts[n]).isCloseTo(truth, within(2e-7));
            }
        }
    }

    @Test
    void noiseHasItsDeclaredLevelAndNoColour() {
        Bursts bursts = new Bursts(6500, 1e-5, 1e-9, 720, List.of(0.0), 0.02);
        int frames = 200_000;
        double[] volts = play(bursts, 10, frames);
        double square = 0;
        double neighbours = 0;
        for (int n = 1; n < frames; n++) {
            square += volts[n] * volts[n];
            neighbours += volts[n] * volts[n - 1];
        }
        // the rms of n draws spreads by 1/sqrt(2 n) = 0.16 %, their correlation by 1/sqrt(n) = 0.22 %; five times that
        assertThat(Math.sqrt(square / frames)).isCloseTo(0.02, within(0.02 * 0.008));
        assertThat(neighbours / square).isCloseTo(0, within(0.011));
    }
}
