package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static understudy.measure.Signals.RATE_HZ;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.measure.InputFault.Kind;

class InputCheckTest {
    private static final InputCheck CHECK = new InputCheck(RATE_HZ, 1, 5, 0);
    private static final int FRAMES = 5 * 48_000;

    private static double[] tone(double peak) {
        return Signals.sampled(FRAMES, t -> peak * Math.sin(2 * Math.PI * 997 * t));
    }

    private static List<Kind> kinds(InputCheck check, double[]... channels) {
        return check.of(channels).stream().map(InputFault::kind).toList();
    }

    private static String message(double[]... channels) {
        return CHECK.of(channels).get(0).message();
    }

    @Test
    void aGoodRecordingHasNoFault() {
        assertThat(CHECK.of(new double[][] {Signals.withNoise(tone(0.7), 1e-4, 1), tone(0.5)})).isEmpty();
        // what the tool itself plays: a sweep, and a wheel whose tooth rate hides every multiple of 50 Hz
        SineSweep sweep = SineSweep.usual(RATE_HZ, 0.8);
        assertThat(new InputCheck(RATE_HZ, 1, sweep.seconds(), 0).of(new double[][] {sweep.samples()})).isEmpty();
        double[] wheel = new TestWheel(36, 35).reluctor(new TestWheel.Motion(10, 10, 5), 0.25, 14);
        assertThat(new InputCheck(RATE_HZ, 1, 5, 10).of(new double[][] {wheel})).isEmpty();
    }

    @Test
    void silence() {
        assertThat(kinds(CHECK, new double[FRAMES])).containsExactly(Kind.SILENT);
        assertThat(message(new double[FRAMES])).contains("every sample is zero", "not permitted");
        double[] noise = Signals.withNoise(new double[FRAMES], 1e-4, 2);
        assertThat(kinds(CHECK, noise)).containsExactly(Kind.SILENT);
        assertThat(message(noise)).startsWith("channel 1: only noise").contains("check that the cable");
    }

    @Test
    void oneDeadChannel() {
        assertThat(kinds(CHECK, tone(0.5), Signals.withNoise(new double[FRAMES], 1e-5, 3))).containsExactly(Kind.CHANNEL_DEAD);
        assertThat(CHECK.of(new double[][] {tone(0.5), new double[FRAMES]}).get(0).channel()).isEqualTo(2);
    }

    @Test
    void clippingAndLevels() {
        double[] clipped = Arrays.stream(tone(1.1)).map(v -> Math.max(-1, Math.min(1 - 1.0 / 32768, v))).toArray();
        assertThat(kinds(CHECK, clipped)).containsExactly(Kind.CLIPPED);
        assertThat(kinds(CHECK, tone(0.99))).containsExactly(Kind.TOO_HIGH);
        assertThat(kinds(CHECK, tone(0.9))).isEmpty();
        assertThat(kinds(CHECK, tone(0.02))).containsExactly(Kind.TOO_LOW);
        assertThat(message(tone(0.02))).isEqualTo("channel 1: too low, peaks at 2.00 % of full scale, at least 3 % are"
                + " needed; raise the recording level, or use a line input instead of a microphone input");
        // a Hall pattern rests at its high level for long, which is no clipping
        assertThat(kinds(new InputCheck(RATE_HZ, 1, 5, 5), new TestWheel(4, 3).hall(new TestWheel.Motion(5, 5, 5), -0.9, 0.9, 1.5))).isEmpty();
    }

    /** Mains is seldom exactly on its frequency; both are found among noise, and neither where there is none. */
    @ParameterizedTest
    @ValueSource(doubles = {49.93, 50.02, 59.95, 60.03})
    void hum(double mainsHz) {
        double[] humming = Signals.withNoise(Signals.sampled(FRAMES, t -> 0.5 * Math.sin(2 * Math.PI * 997 * t)
                + 0.004 * Math.sin(2 * Math.PI * mainsHz * t) + 0.003 * Math.sin(2 * Math.PI * 3 * mainsHz * t)), 1e-4, 4);
        assertThat(kinds(CHECK, humming)).containsExactly(Kind.HUM);
        // 0.004 and 0.003 V peak beside 0.5 V peak: 1 %
        assertThat(message(humming)).contains("mains hum of " + Math.round(mainsHz) + " Hz", "1.00 % of the recording");
    }

    @Test
    void ownLinesAtTheMainsFrequencyAreNoHum() {
        double[] wheel = Signals.sampled(FRAMES, t -> 0.5 * Math.sin(2 * Math.PI * 50 * t));
        assertThat(kinds(CHECK, wheel)).containsExactly(Kind.HUM);
        assertThat(kinds(new InputCheck(RATE_HZ, 1, 5, 12.5), wheel)).isEmpty();
    }

    @Test
    void endsEarly() {
        assertThat(kinds(CHECK, Arrays.copyOf(tone(0.5), 100_000))).containsExactly(Kind.ENDS_EARLY);
        double[] stopped = tone(0.5);
        Arrays.fill(stopped, 120_000, FRAMES, 0);
        assertThat(kinds(CHECK, stopped)).containsExactly(Kind.ENDS_EARLY);
        assertThat(message(stopped)).contains("the signal stops early, after 2.500 s of 5.000 s");
        // one short pulse a second is sparse, not ended
        double[] sparse = new double[FRAMES];
        for (int i = 24_000; i < FRAMES; i += 48_000) {
            Arrays.fill(sparse, i, i + 50, 0.5);
        }
        assertThat(kinds(CHECK, sparse)).isEmpty();
    }
}
