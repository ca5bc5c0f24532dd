package understudy.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.calibrate.Interference.Kind;
import understudy.measure.InputFault;
import understudy.refusal.Refused;

/** Calibration by loopback over chains made here in software, each with one known trait. */
class LoopbackFindingsTest {

    private static final int RATE = 48_000;
    private static final TestProgram PROGRAM = new TestProgram(RATE, 0.5);
    private static final int STARTED_AT = 7_000;
    private static final int LATE_FRAMES = 960;
    private static final int LATENCY_FRAMES = 1_440;
    private static final double[] PLAYED = PROGRAM.samples();

    /** 30 ms late, over noise 100 dB below full scale, with a moment before and after. */
    private static LoopbackRun recorded(UnaryOperator<double[]> chain) {
        double[] came = new double[STARTED_AT + LATENCY_FRAMES + PLAYED.length + 20_000];
        System.arraycopy(PLAYED, 0, came, STARTED_AT + LATENCY_FRAMES, PLAYED.length);
        double[] out = chain.apply(came);
        Random random = new Random(5);
        for (int i = 0; i < out.length; i++) {
            out[i] = Math.max(-1, Math.min(1, out[i] + 1e-5 * random.nextGaussian()));
        }
        return new LoopbackRun(new double[][] {out}, STARTED_AT, LATE_FRAMES, 0, 0, "", false);
    }

    private static LoopbackFindings found(UnaryOperator<double[]> chain) {
        LoopbackRun run = recorded(chain);
        assertThat(LoopbackCheck.of(PROGRAM, run, 0)).isEmpty();
        return LoopbackFindings.of(PROGRAM, run, 0);
    }

    private static List<Kind> kinds(UnaryOperator<double[]> chain) {
        return found(chain).interference().stream().map(Interference::kind).toList();
    }

    private static List<InputFault.Kind> faults(LoopbackRun run) {
        return LoopbackCheck.of(PROGRAM, run, 0).stream().map(InputFault::kind).toList();
    }

    private static UnaryOperator<double[]> each(java.util.function.DoubleUnaryOperator law) {
        return samples -> Arrays.stream(samples).map(law).toArray();
    }

    /** The one-pole high-pass of an AC coupling, discretised by the bilinear transform at its corner. */
    private static double[] highPass(double[] in, double cornerHz) {
        double k = Math.tan(Math.PI * cornerHz / RATE);
        double[] out = new double[in.length];
        for (int i = 1; i < in.length; i++) {
            out[i] = (in[i] - in[i - 1] + (1 - k) * out[i - 1]) / (1 + k);
        }
        return out;
    }

    @Test
    void aStraightCable() {
        LoopbackFindings found = found(each(v -> v));
        assertThat(found.interference()).isEmpty();
        assertThat(found.gainDb()).isCloseTo(0, within(0.01));
        assertThat(found.inverted()).isFalse();
        // the fit's lowest; 0.2 Hz against a sweep from 1 Hz is 0.2 dB at its very first line
        assertThat(found.cornerHz()).isLessThan(0.2);
        assertThat(found.latencySeconds()).isCloseTo((double) LATENCY_FRAMES / RATE, within(1e-6));
        assertThat(found.clockRatio()).isCloseTo(1, within(1e-8));
        // 0.5 peak over noise of 1e-5 rms: 20 lg(0.3536 / 1e-5) = 90.97 dB; its estimate from 1.7 s scatters by far less
        assertThat(found.sinadDb()).isCloseTo(90.97, within(0.1));
        assertThat(found.noisePart()).isCloseTo(1e-5, within(2e-7));
        // log2(2 / (1e-5 sqrt 12)) = 15.82
        assertThat(found.enobBits()).isCloseTo(15.82, within(0.03));
        assertThat(found.points()).allSatisfy(point -> assertThat(point.magnitudeDb()).isCloseTo(0, within(0.05)));
    }

    @ParameterizedTest
    @CsvSource({"3, 0.8", "12, -0.3", "30, -1.5"})
    void cornerGainAndPolarity(double cornerHz, double gain) {
        LoopbackFindings found = found(samples -> each(v -> gain * v).apply(highPass(samples, cornerHz)));
        assertThat(found.interference()).isEmpty();
        // the bounds that the sweep must keep for any such chain
        assertThat(found.cornerHz()).isCloseTo(cornerHz, within(0.01 * cornerHz));
        assertThat(found.gainDb()).isCloseTo(20 * Math.log10(Math.abs(gain)), within(0.01));
        assertThat(found.inverted()).isEqualTo(gain < 0);
        assertThat(found.latencySeconds()).isCloseTo((double) LATENCY_FRAMES / RATE, within(1e-6));
        // at the corner a coupling takes 3.01 dB and turns by 45 degrees
        LoopbackFindings.Point near = found.points().stream()
                .min((a, b) -> Double.compare(Math.abs(a.hz() - cornerHz), Math.abs(b.hz() - cornerHz))).orElseThrow();
        double x = near.hz() / cornerHz;
        assertThat(near.magnitudeDb() - found.gainDb()).isCloseTo(10 * Math.log10(x * x / (1 + x * x)), within(0.05));
    }

    @Test
    void distortionByOrder() {
        // a v + b v^3: third over first is b A^2/4 / (a + 3 b A^2/4); A = 0.5, b = 0.02: 1/4 * 0.005 = 0.00125, -58 dB
        LoopbackFindings found = found(each(v -> v + 0.02 * v * v * v));
        double third = 20 * Math.log10(0.02 * 0.25 / 4 / (1 + 3 * 0.02 * 0.25 / 4));
        assertThat(found.harmonicsDb().get(1)).isCloseTo(third, within(0.1));
        assertThat(found.thdDb()).isCloseTo(third, within(0.1));
        assertThat(found.harmonicsDb().get(0)).isLessThan(-90);
        assertThat(found.interference()).isEmpty();
    }

    @Test
    void aLimiterOnTheWay() {
        assertThat(kinds(each(v -> Math.max(-0.4, Math.min(0.4, v))))).containsExactly(Kind.LIMITED);
        assertThat(kinds(each(v -> Math.tanh(v)))).contains(Kind.LIMITED);
    }

    @Test
    void anEqualiserOnTheWay() {
        // a shelf: what a one-pole low-pass at 300 Hz lets through is added once more, 6 dB more bass
        assertThat(kinds(samples -> {
            double[] out = samples.clone();
            double low = 0;
            for (int i = 0; i < out.length; i++) {
                low += 2 * Math.PI * 300 / RATE * (samples[i] - low);
                out[i] = 0.5 * (samples[i] + low);
            }
            return out;
        })).containsExactly(Kind.EQUALISED);
    }

    @Test
    void aResamplerOnTheWay() {
        // to 44 100 Hz and back by straight lines between samples, as a careless system does
        assertThat(kinds(samples -> straightLines(straightLines(samples, 48_000.0 / 44_100), 44_100.0 / 48_000)))
                .contains(Kind.RESAMPLED);
    }

    /**
     * A careful one leaves no noise, only an end below half of 44 100 Hz: here one ideal low-pass at 20 kHz, a sinc of 400
     * frames under a Hann window. Slow filters of two converters (each 4 dB down there, by a first-order fall from 0.3 of
     * the rate on) are no resampler.
     */
    @Test
    void aCarefulResamplerOnTheWay() {
        assertThat(kinds(samples -> filtered(samples, 400, k -> (k == 0 ? 1 : Math.sin(Math.PI * k * 20 / 24) / (Math.PI * k * 20 / 24))
                * 20 / 24 * (0.5 + 0.5 * Math.cos(Math.PI * k / 400))))).containsExactly(Kind.RESAMPLED);
        // 1/4, 1/2, 1/4 would be cos^2(pi f/rate); a blend of 6 % lets 1 - 0.24 sin^2(pi 0.455) = 0.765 pass, 2.3 dB down, four times
        assertThat(kinds(samples -> {
            double[] out = samples;
            for (int pass = 0; pass < 4; pass++) {
                out = filtered(out, 1, k -> k == 0 ? 0.88 : 0.06);
            }
            return out;
        })).doesNotContain(Kind.RESAMPLED);
    }

    private static double[] filtered(double[] in, int half, java.util.function.IntToDoubleFunction weight) {
        double[] weights = java.util.stream.IntStream.rangeClosed(-half, half).mapToDouble(weight).toArray();
        double[] out = new double[in.length];
        for (int i = half; i < in.length - half; i++) {
            for (int k = -half; k <= half; k++) {
                out[i] += weights[k + half] * in[i + k];
            }
        }
        return out;
    }

    @Test
    void ratesThatDiffer() {
        LoopbackRun slow = recorded(samples -> straightLines(samples, 44_100.0 / 48_000));
        assertThatThrownBy(() -> LoopbackFindings.of(PROGRAM, slow, 0)).isInstanceOf(Refused.class)
                .hasMessageContaining("comes back as 916 Hz") // 997 x 44.1/48 is 915.99
                .hasMessageContaining("different sample rates");
        LoopbackFindings converted = LoopbackFindings.of(PROGRAM,
                new LoopbackRun(recorded(each(v -> v)).channels(), STARTED_AT, LATE_FRAMES, 0, 0, "S16_LE, 2 channels, 44100 Hz", false), 0);
        assertThat(converted.interference()).extracting(Interference::kind).containsExactly(Kind.RESAMPLED);
    }

    @Test
    void theClockOfAnotherDevice() {
        // 60 ppm is an everyday difference of two crystals: measured, not complained of
        LoopbackFindings found = LoopbackFindings.of(PROGRAM, recorded(samples -> cubic(samples, 1 + 60e-6)), 0);
        assertThat(found.clockRatio() - 1).isCloseTo(60e-6, within(1e-8));
        assertThat(found.interference()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"440, MIXED", "50.03, HUM", "59.95, HUM", "100.06, HUM"})
    void otherSoundsMixedIn(double hz, Kind kind) {
        assertThat(kinds(samples -> {
            double[] out = samples.clone();
            for (int i = 0; i < out.length; i++) {
                out[i] += 0.003 * Math.sin(2 * Math.PI * hz * i / RATE);
            }
            return out;
        })).containsExactly(kind);
    }

    @Test
    void samplesThatWentMissing() {
        LoopbackRun good = recorded(each(v -> v));
        assertThat(LoopbackFindings.of(PROGRAM, new LoopbackRun(good.channels(), STARTED_AT, LATE_FRAMES, 2, 0, "", false), 0).interference())
                .extracting(Interference::kind).containsExactly(Kind.INTERRUPTED);
    }

    @Test
    void inputsThatCantBeUsed() {
        assertThat(faults(recorded(each(v -> 0)))).containsExactly(InputFault.Kind.SILENT);
        assertThat(faults(recorded(each(v -> 3 * v)))).containsExactly(InputFault.Kind.CLIPPED);
        assertThat(faults(recorded(each(v -> 1.97 * v)))).containsExactly(InputFault.Kind.TOO_HIGH);
        assertThat(faults(recorded(each(v -> 0.02 * v)))).containsExactly(InputFault.Kind.TOO_LOW);
        LoopbackRun good = recorded(each(v -> v));
        double[] other = new double[good.channels()[0].length];
        assertThat(faults(new LoopbackRun(new double[][] {other, good.channels()[0]}, STARTED_AT, LATE_FRAMES, 0, 0, "", false)))
                .containsExactly(InputFault.Kind.CHANNEL_DEAD);
        double[] cut = Arrays.copyOf(good.channels()[0], 9 * RATE);
        assertThat(faults(new LoopbackRun(new double[][] {cut}, STARTED_AT, LATE_FRAMES, 0, 0, "", false)))
                .containsExactly(InputFault.Kind.ENDS_EARLY);
    }

    /** Reads at another speed, straight between samples. */
    private static double[] straightLines(double[] in, double speed) {
        double[] out = new double[(int) ((in.length - 1) / speed)];
        for (int i = 0; i < out.length; i++) {
            int at = (int) (i * speed);
            double part = i * speed - at;
            out[i] = in[at] * (1 - part) + in[at + 1] * part;
        }
        return out;
    }

    /** Likewise through four samples (Lagrange): for a tone of 997 Hz good to 1e-5. */
    private static double[] cubic(double[] in, double speed) {
        double[] out = new double[(int) ((in.length - 3) / speed)];
        for (int i = 2; i < out.length; i++) {
            int at = (int) (i * speed);
            double u = i * speed - at;
            out[i] = -u * (u - 1) * (u - 2) / 6 * in[at - 1] + (u + 1) * (u - 1) * (u - 2) / 2 * in[at]
                    - (u + 1) * u * (u - 2) / 2 * in[at + 1] + (u + 1) * u * (u - 1) / 6 * in[at + 2];
        }
        return out;
    }
}
