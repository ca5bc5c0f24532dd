package understudy.wave;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.pattern.Reluctor;
import understudy.pattern.WheelSignal;

/** The reluctor against its closed form: flux = tooth profile smoothed by a Gaussian, volts = its rate of change. */
class ReluctorTest {
    private static final int RATE = 48_000;

    /** Slope of the flux from the normal density itself, three turns either way; independent of the engine's tables. */
    private static double slope(double turn, int positions, int missing, double polePitches) {
        double pitch = 1.0 / positions;
        double sigma = polePitches * pitch;
        double sum = 0;
        for (int k = -positions; k < 2 * positions; k++) {
            if (Math.floorMod(k, positions) >= positions - missing) {
                continue;
            }
            double before = (turn - (k - 0.25) * pitch) / sigma;
            double after = (turn - (k + 0.25) * pitch) / sigma;
            sum += Math.exp(-before * before / 2) - Math.exp(-after * after / 2);
        }
        return sum;
    }

    private static double crossing(double low, double high, int positions, int missing, double polePitches) {
        for (int i = 0; i < 100; i++) {
            double middle = (low + high) / 2;
            if (slope(middle, positions, missing, polePitches) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    @ParameterizedTest
    @CsvSource({
        "60, 2, 0.3, 200", "60, 2, 0.3, 800", "60, 2, 0.3, 3517", "60, 2, 0.3, 6613", "60, 2, 0.3, 7777", "60, 2, 0.3, 8000",
        "60, 2, 0.2, 3517", "60, 2, 0.25, 7777",
        "36, 1, 0.3, 200", "36, 1, 0.3, 800", "36, 1, 0.3, 3517", "36, 1, 0.3, 7777", "36, 1, 0.3, 8000", "36, 1, 0.2, 7777"
    })
    void everyToothCrossesWhereTheClosedFormPutsIt(int positions, int missing, double pole, double rpm) {
        double turnsPerFrame = rpm / 60 / RATE;
        int frames = (int) Math.max(20_000, 1.2 / turnsPerFrame);
        double[] volts = Patterns.to24Bits(Patterns.render(
                Patterns.renderer(Patterns.of(Patterns.reluctor(positions, missing, pole)), RATE, rpm / 60),
                frames, 256)[0]);
        Reconstruction signal = new Reconstruction(volts);
        double pitch = 1.0 / positions;
        int teeth = positions - missing;
        double[] expected = new double[teeth];
        for (int k = 0; k < teeth; k++) {
            boolean besideGap = k < 2 || k >= teeth - 2;
            expected[k] = besideGap
                    ? crossing((k - 0.25) * pitch, (k + 0.25) * pitch, positions, missing, pole)
                    : k * pitch;
        }
        double sum = 0;
        int count = 0;
        for (int turn = 0; turn < frames * turnsPerFrame + 1; turn++) {
            for (int k = 0; k < teeth; k++) {
                double at = (turn + expected[k]) / turnsPerFrame;
                if (at < 500 || at > frames - 500) {
                    continue;
                }
                double miss = signal.crossing(at, 0, 0.3) - at;
                sum += miss * miss;
                count++;
            }
        }
        double rmsNs = Math.sqrt(sum / count) / RATE * 1e9;
        assertThat(count).isGreaterThan(30);
        // The asked 0.25 ns. Slower wheels cannot reach it at 24 bits: a rounding error of 4.9e-8 V rms on a slope of
        // 2 pi 0.7 V 120 Hz (36-1 at 200 rpm) alone is 0.09 ns, and both volts and tooth rate fall with speed.
        assertThat(rmsNs).isLessThan(0.25);
    }

    @Test
    void voltsFollowTheClosedFormRiseWithSpeedAndStopAtTheCeiling() {
        // 1.4 V peak to peak at 200 rpm, ceiling 1.6 V: 100, 200 and 2400 rpm give 0.7, 1.4 and 1.6 V
        double evenPeak = 0;
        for (int i = 0; i < 10_000; i++) {
            evenPeak = Math.max(evenPeak, slope(0.5 + i / 10_000.0 / 60, 60, 2, 0.3));
        }
        double[][] cases = {{100 / 60.0, 0.7}, {200 / 60.0, 1.4}, {40, 1.6}};
        for (double[] each : cases) {
            double[] volts = Patterns.render(
                    Patterns.renderer(Patterns.of(Patterns.reluctor(60, 2, 0.3)), RATE, each[0]), 20_000, 256)[0];
            for (int n = 0; n < volts.length; n++) {
                double turn = n * each[0] / RATE;
                double truth = each[1] / 2 * slope(turn - Math.floor(turn), 60, 2, 0.3) / evenPeak;
                // tables to 2e-10, and the peak of the even teeth met within 0.001 % on either side
                assertThat(volts[n]).isCloseTo(truth, within(2e-5));
            }
        }
    }

    @Test
    void reversedPolarityIsTheSameUpsideDown() {
        WheelSignal normal = (WheelSignal) Patterns.reluctor(36, 1, 0.3);
        Reluctor sensor = (Reluctor) normal.sensor();
        WheelSignal reversed = new WheelSignal(normal.wheel(), new Reluctor(
                sensor.peakToPeakVolts(), sensor.atHz(), sensor.ceilingVolts(), sensor.polePitches(), true));
        double[] a = Patterns.render(Patterns.renderer(Patterns.of(normal), RATE, 12), 5000, 64)[0];
        double[] b = Patterns.render(Patterns.renderer(Patterns.of(reversed), RATE, 12), 5000, 64)[0];
        for (int n = 0; n < a.length; n++) {
            assertThat(b[n]).isEqualTo(-a[n]);
        }
    }

    @Test
    void theFactsNameTheCrossingsOfTheClosedForm() {
        OutputFacts facts = OutputFacts.of(Patterns.of(Patterns.reluctor(36, 1, 0.3))).get(0);
        List<OutputFacts.Event> events = facts.timingEvents();
        assertThat(events).hasSize(35);
        for (int k = 0; k < 35; k++) {
            double truth = 360 * crossing((k - 0.25) / 36.0, (k + 0.25) / 36.0, 36, 1, 0.3);
            // tables to 2e-10 of a slope that changes by about 1 in a pole width of 3 deg
            assertThat(events.get(k).angleDeg()).isCloseTo(truth, within(1e-8));
        }
        assertThat(facts.eventRateHz(10)).isCloseTo(350, within(1e-9));
    }
}
