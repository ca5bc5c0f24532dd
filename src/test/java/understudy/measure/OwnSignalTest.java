package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.measure.DetectedWheel.Polarity;
import understudy.measure.DetectedWheel.Sensor;
import understudy.measure.EdgeTiming.Course;
import understudy.pattern.Hall;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Profile;
import understudy.pattern.Reluctor;
import understudy.pattern.Speed;
import understudy.pattern.SpeedUnit;
import understudy.pattern.Tone;
import understudy.pattern.Tooth;
import understudy.pattern.Wheel;
import understudy.pattern.WheelSignal;
import understudy.wave.OutputFacts;
import understudy.wave.Renderer;

/** What the instruments say of the tool's own signal, at 48 kHz and 24 bits, against geometry in closed form. */
class OwnSignalTest {
    private static final int RATE = 48_000;

    private static Wheel wheel(int places, int missing, boolean centred) {
        double pitch = 360.0 / places;
        List<Tooth> teeth = new ArrayList<>();
        for (int i = 0; i < places - missing; i++) {
            teeth.add(new Tooth(i + 1, i * pitch - (centred ? pitch / 4 : 0), pitch / 2));
        }
        return new Wheel(360, pitch, teeth);
    }

    private static Pattern pattern(understudy.pattern.Signal signal, Optional<Profile> profile) {
        return new Pattern("test", "Test", "", "", List.of(), List.of(), new Speed(SpeedUnit.HZ, Double.NaN, 10, 0, 1000),
                List.of(new Output("one", 1, 0, signal)), profile, List.of(), 1);
    }

    private static double[] rendered(Pattern pattern, double startHz, int frames) {
        Renderer renderer = new Renderer(pattern, RATE, startHz, new AtomicReference<>(Renderer.startingHand(pattern)));
        double[][] volts = new double[1][frames];
        renderer.render(volts, frames);
        double[] rounded = new double[frames];
        double step = Math.sqrt(2) / (1 << 23);
        for (int i = 0; i < frames; i++) {
            rounded[i] = Math.rint(volts[0][i] / step) * step;
        }
        return rounded;
    }

    private static double[] edges(int places, int missing, double part) {
        double[] edges = new double[places - missing];
        for (int k = 0; k < edges.length; k++) {
            edges[k] = (k + part) / places;
        }
        return edges;
    }

    /** A 60-2 Hall wheel: every edge against its angle, at the level declared. */
    @ParameterizedTest
    @CsvSource({"63.7", "799.3", "3000", "3517", "6613", "8000"})
    void hallEdgesAtSteadySpeed(double rpm) {
        double[] volts = rendered(pattern(new WheelSignal(wheel(60, 2, false), new Hall(-1.2, 1.2)), Optional.empty()),
                rpm / 60, Math.max(2 * RATE, (int) (150 * RATE / rpm)));
        HallTiming known = HallTiming.at(0, volts, RATE, edges(60, 2, 0), edges(60, 2, 0.5), Course.STEADY);
        HallTiming solved = HallTiming.of(volts, RATE, edges(60, 2, 0), edges(60, 2, 0.5), Course.STEADY);
        System.out.printf("own hall 60-2 %6.0f rpm: %5d edges, rms %.4f ns, worst %.4f ns; level solved %.1e V, rms %.4f ns%n",
                rpm, known.timing().missSeconds().length, known.timing().rmsSeconds() * 1e9,
                known.timing().worstSeconds() * 1e9, solved.levelVolts(), solved.timing().rmsSeconds() * 1e9);
        assertThat(known.timing().rmsSeconds()).isLessThan(0.25e-9);
        assertThat(solved.timing().rmsSeconds()).isLessThan(0.25e-9);
        assertThat(known.timing().startHz()).isCloseTo(rpm / 60, within(1e-9 * rpm));
    }

    @Test
    void hallEdgesDuringARamp() {
        Profile ramp = new Profile(List.of(new Profile.Ramp(500 / 60.0, 6000 / 60.0, 5)));
        double[] volts = rendered(pattern(new WheelSignal(wheel(60, 2, false), new Hall(-1.2, 1.2)), Optional.of(ramp)),
                500 / 60.0, 5 * RATE);
        HallTiming timing = HallTiming.at(0, volts, RATE, edges(60, 2, 0), edges(60, 2, 0.5), Course.LINEAR);
        System.out.printf("own hall 60-2 ramp: %d edges, rms %.4f ns, worst %.4f ns%n", timing.timing().missSeconds().length,
                timing.timing().rmsSeconds() * 1e9, timing.timing().worstSeconds() * 1e9);
        assertThat(timing.timing().rmsSeconds()).isLessThan(0.5e-9);
        assertThat(timing.timing().endHz()).isCloseTo(100, within(1.0));
    }

    @ParameterizedTest
    @CsvSource({"60, 2, 400", "60, 2, 3000", "36, 1, 800", "36, 1, 6000"})
    void reluctorCrossingsAtSteadySpeed(int places, int missing, double rpm) {
        Pattern pattern = pattern(new WheelSignal(wheel(places, missing, true), new Reluctor(1, 10, 1.5, 0.25, false)),
                Optional.empty());
        double[] volts = rendered(pattern, rpm / 60, 3 * RATE);
        DetectedWheel wheel = WheelDetector.detect(volts, RATE, Sensor.RELUCTOR, 0);
        assertThat(wheel.polarity()).isEqualTo(Polarity.NORMAL);
        assertThat(wheel.placesPerTurn()).isEqualTo(places);
        // the crossings of the flux's slope, solved on a model of its own in TestWheel (leading edges a quarter pitch early)
        int[] gone = new int[missing];
        for (int m = 0; m < missing; m++) {
            gone[m] = places - 1 - m;
        }
        EdgeTiming timing = EdgeTiming.of(wheel.instantsSeconds(), new TestWheel(places, gone).crossings(0.25), Course.STEADY);
        System.out.printf("own reluctor %d-%d %5.0f rpm: %d crossings, rms %.4f ns, worst %.4f ns%n", places, missing, rpm,
                timing.missSeconds().length, timing.rmsSeconds() * 1e9, timing.worstSeconds() * 1e9);
        assertThat(timing.rmsSeconds()).isLessThan(0.25e-9);
    }

    /** Nothing but harmonics of one turn, down to -120 dB of the largest line. */
    @ParameterizedTest
    @CsvSource({"true, 1000", "true, 3517", "true, 7900", "false, 1000", "false, 3517"})
    void nothingBetweenTheHarmonics(boolean hall, double rpm) {
        WheelSignal signal = hall
                ? new WheelSignal(wheel(60, 2, false), new Hall(-1.2, 1.2))
                : new WheelSignal(wheel(60, 2, true), new Reluctor(1, 10, 1.5, 0.25, false));
        double[] volts = rendered(pattern(signal, Optional.empty()), rpm / 60, 10 * RATE);
        Spectrum spectrum = Spectrum.of(volts, RATE);
        double largest = spectrum.peaks(1).get(0).amplitudeVolts();
        Spectrum.Peak other = spectrum.largestNotHarmonic(rpm / 60, 20_000);
        System.out.printf("own %s 60-2 %5.0f rpm: largest other line %.1f dB at %.1f Hz%n", hall ? "hall" : "reluctor", rpm,
                20 * Math.log10(other.amplitudeVolts() / largest), other.frequencyHz());
        assertThat(20 * Math.log10(other.amplitudeVolts() / largest)).isLessThan(-120);
    }

    @Test
    void aSineIsAsPureAs24BitsAllow() {
        Tone sine = new Tone(Tone.Shape.SINE, 997, Double.NaN, 2.6, 0, 0.5);
        double[] volts = rendered(pattern(sine, Optional.empty()), 10, 5 * RATE);
        ToneQuality quality = ToneQuality.of(Spectrum.of(volts, RATE), 20_000);
        SineFit fit = SineFit.fourParameters(volts, RATE);
        System.out.printf("own sine: SINAD %.2f dB (spectrum), %.2f dB (fit), THD %.1f dB, frequency off by %.1e ppm%n",
                quality.sinadDb(), fit.sinadDb(), quality.thdDb(), (fit.frequencyHz() / 997 - 1) * 1e6);
        assertThat(quality.sinadDb()).isGreaterThan(120);
        assertThat(fit.sinadDb()).isGreaterThan(120);
        assertThat(fit.amplitudeVolts()).isCloseTo(1.3, within(1e-7));
    }

    /** The detector finds what the renderer's own facts declare, on signals that it was not told about. */
    @ParameterizedTest
    @CsvSource({"60, 2, true", "36, 1, true", "24, 1, true", "60, 2, false", "36, 1, false", "24, 1, false"})
    void declaredFactsAreFound(int places, int missing, boolean hall) {
        WheelSignal signal = hall
                ? new WheelSignal(wheel(places, missing, false), new Hall(-1.2, 1.2))
                : new WheelSignal(wheel(places, missing, true), new Reluctor(1, 10, 1.5, 0.25, true));
        Pattern pattern = pattern(signal, Optional.empty());
        DetectedWheel wheel = WheelDetector.detect(rendered(pattern, 20, 2 * RATE), RATE);
        OutputFacts facts = OutputFacts.of(pattern).get(0);
        assertThat(wheel.eventsPerTurn()).isEqualTo((int) facts.eventsPerTurn());
        assertThat(wheel.eventRateHz()).isCloseTo(facts.eventRateHz(20), within(0.02 * facts.eventRateHz(20)));
        assertThat(wheel.sensor()).isEqualTo(hall ? Sensor.TWO_LEVEL : Sensor.RELUCTOR);
        assertThat(wheel.polarity()).isEqualTo(hall ? Polarity.NORMAL : Polarity.REVERSED);
        List<Double> declared = facts.intervalsDeg();
        for (int k = 0; k < declared.size(); k++) {
            // teeth beside a reluctor's gap are measured against neighbours that are a few hundredths of a pitch off
            assertThat(wheel.intervalsPitches()[k]).isCloseTo(declared.get(k) * places / 360, within(0.1));
        }
    }
}
