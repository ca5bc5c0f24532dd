package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static understudy.measure.Signals.RATE_HZ;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.refusal.Refused;

class ChainResponseTest {
    private static final SineSweep SWEEP = SineSweep.usual(RATE_HZ, 0.8);

    /** Farina's sweep as a function of time, with raised-cosine ends, written anew. */
    private static double sweep(double t) {
        double growth = SWEEP.seconds() / Math.log(SWEEP.toHz() / SWEEP.fromHz());
        double end = (Math.ceil(SWEEP.seconds() * RATE_HZ) - 1) / RATE_HZ;
        if (t <= 0 || t >= end) {
            return 0;
        }
        double in = Math.min(1, t / 0.5);
        double out = Math.min(1, (end - t) / 0.02);
        return 0.8 * Math.sin(2 * Math.PI * SWEEP.fromHz() * growth * (Math.exp(t / growth) - 1))
                * Math.pow(Math.sin(Math.PI / 2 * in), 2) * Math.pow(Math.sin(Math.PI / 2 * out), 2);
    }

    /**
     * A chain in the time domain, no transform involved: delay in closed form, then the first-order high-pass
     * y = x - w int exp(-w(t-s)) x(s) ds, integrated over each frame by Gauss-Legendre quadrature of order 8.
     */
    private static double[] chain(DoubleUnaryOperator x, int frames, double cornerHz, double gain, double latency) {
        double[] node = {-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526};
        double[] weight = {0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538};
        double w = 2 * Math.PI * cornerHz;
        double h = 1 / RATE_HZ;
        double low = 0;
        double[] y = new double[frames];
        for (int i = 0; i < frames; i++) {
            double t = i * h - latency;
            if (i > 0) {
                low *= Math.exp(-w * h);
                for (int k = 0; k < 4; k++) {
                    double s = t - h / 2 + node[k] * h / 2;
                    low += w * h / 2 * weight[k] * Math.exp(-w * (t - s)) * x.applyAsDouble(s);
                }
            }
            y[i] = gain * (x.applyAsDouble(t) - low);
        }
        return y;
    }

    private static double rms(double[] v) {
        return Math.sqrt(Arrays.stream(v).map(a -> a * a).average().orElseThrow());
    }

    @Test
    void theSweepIsFarinas() {
        double[] samples = SWEEP.samples();
        assertThat(samples).hasSize(9 * 48_000);
        // phases up to 17 000 turns in doubles: 1e-11 turns
        for (int i = 0; i < samples.length; i++) {
            assertThat(samples[i]).isCloseTo(sweep(i / RATE_HZ), within(1e-9));
        }
    }

    @ParameterizedTest
    @CsvSource({"3, 0.5, 0", "3, -2.2, 0.05", "30, -0.9, 0.0123456789", "30, 1, 0.0000087", "11.7, -0.031, 0.0234567",
        "20, 1.1, 0.05"})
    void recoversAKnownChain(double cornerHz, double gain, double latency) {
        double[] clean = chain(ChainResponseTest::sweep, SWEEP.samples().length + 4800, cornerHz, gain, latency);
        double[] recorded = Signals.withNoise(clean, rms(clean) * 1e-4, 21);
        ChainResponse response = ChainResponse.of(SWEEP, recorded);
        double gainDb = 20 * Math.log10(Math.abs(gain));
        System.out.printf("chain %5.2f Hz %6.3f %8.3f ms: corner %+.5f %%, gain %+.6f dB, latency %+.5f us, unexplained %.1e%n",
                cornerHz, gain, latency * 1e3, 100 * (response.cornerHz() / cornerHz - 1), response.gainDb() - gainDb,
                1e6 * (response.latencySeconds() - latency), response.unexplained());
        assertThat(response.inverted()).isEqualTo(gain < 0);
        assertThat(response.cornerHz()).isCloseTo(cornerHz, within(0.01 * cornerHz));
        assertThat(response.gainDb()).isCloseTo(gainDb, within(0.01));
        assertThat(response.latencySeconds()).isCloseTo(latency, within(1e-6));
        // 14 000 and more samples of noise alone: its rms is known to 0.6 %, four times that
        assertThat(response.noiseRmsVolts()).isCloseTo(rms(clean) * 1e-4, within(0.025 * rms(clean) * 1e-4));
        for (double hz : new double[] {5, 20, 100, 1000, 10_000, 19_000}) {
            double x = hz / cornerHz;
            // the gate of 0.28 s and 1 s blurs what bends within 1 Hz: 0.1 dB at 5 Hz, less above
            double tolerance = hz < 10 ? 0.1 : 0.02;
            assertThat(response.magnitudeDb(hz)).as("magnitude at %s Hz", hz)
                    .isCloseTo(gainDb - 10 * Math.log10(1 + 1 / (x * x)), within(tolerance));
            double phase = Math.toDegrees(Math.atan(1 / x)) + (gain < 0 ? 180 : 0);
            assertThat(Math.IEEEremainder(response.phaseDeg(hz) - phase, 360)).as("phase at %s Hz", hz)
                    .isCloseTo(0, within(hz < 10 ? 1 : 0.1));
        }
    }

    /** y = x + b x^2 + c x^3 of a sine A: second harmonic b A^2/2, third c A^3/4, first A + 3/4 c A^3. */
    @Test
    void distortionByOrder() {
        double b = 0.004;
        double c = 0.003;
        DoubleUnaryOperator bent = t -> sweep(t) + b * Math.pow(sweep(t), 2) + c * Math.pow(sweep(t), 3);
        double[] recorded = Signals.withNoise(chain(bent, SWEEP.samples().length, 3, 1, 0.004), 2e-5, 22);
        ChainResponse response = ChainResponse.of(SWEEP, recorded);
        double first = 1 + 0.75 * c * 0.64;
        for (double hz : new double[] {100, 1000, 3000}) {
            assertThat(response.harmonicDb(2, hz)).isCloseTo(20 * Math.log10(b * 0.8 / 2 / first), within(0.1));
            assertThat(response.harmonicDb(3, hz)).isCloseTo(20 * Math.log10(c * 0.64 / 4 / first), within(0.1));
            // noise of 2e-5 V in the gate is all there is
            assertThat(response.harmonicDb(4, hz)).isLessThan(-85);
        }
        // distortion hardly disturbs the linear part
        assertThat(response.gainDb()).isCloseTo(20 * Math.log10(first), within(0.01));
        assertThat(response.cornerHz()).isCloseTo(3, within(0.03));
        assertThat(response.latencySeconds()).isCloseTo(0.004, within(1e-6));
    }

    /**
     * The slopes that the fit descends by, against differences of the squared error itself. A central difference of step h is
     * off by h^2 times the third derivative over 6: 1e-8 for 1e-4; rounding of the error adds 1e-16 / 1e-4 of it.
     */
    @Test
    void theFitsSlopesAreThoseOfItsError() {
        double[] sent = new double[2000];
        double[] received = new double[2000];
        java.util.Random random = new java.util.Random(3);
        for (int i = 0; i < sent.length; i++) {
            sent[i] = random.nextGaussian();
            received[i] = random.nextGaussian();
        }
        double[] at = {-0.7, 12.3, 0.0123};
        double[][] normal = sums(sent, received, at, 0, 0).normal;
        double[] unit = {1, 1, 1e-3};
        double whole = sums(sent, received, at, 0, 0).error;
        for (int p = 0; p < 3; p++) {
            double h = 1e-4 * unit[p];
            double slope = (sums(sent, received, at, p, h).error - sums(sent, received, at, p, -h).error) / (2 * h);
            // the error's slope is -2 times the right-hand side
            assertThat(slope * unit[p]).as("parameter %s", p).isCloseTo(-2 * normal[p][3] * unit[p], within(1e-6 * whole));
            assertThat(Math.abs(slope * unit[p])).as("parameter %s counts", p).isGreaterThan(1e-4 * whole);
        }
    }

    /** Moved by a part of the gain, by the logarithm of the corner, or by seconds. */
    private static ChainFit.Sums sums(double[] sent, double[] received, double[] at, int parameter, double by) {
        double gain = at[0] * (parameter == 0 ? 1 + by : 1);
        double corner = at[1] * (parameter == 1 ? Math.exp(by) : 1);
        double latency = at[2] + (parameter == 2 ? by : 0);
        return new ChainFit.Sums(sent, received, 0.5, 1, 400, gain, corner, latency);
    }

    @Test
    void whatIsNoResponseIsSaid() {
        assertThatThrownBy(() -> ChainResponse.of(SWEEP, new double[100_000]))
                .isInstanceOf(Refused.class).hasMessageContaining("ends early: 2.083 s of 9 s");
        assertThatThrownBy(() -> ChainResponse.of(SWEEP, new double[432_000]))
                .isInstanceOf(Refused.class).hasMessageContaining("no sweep comes back");
        assertThatThrownBy(() -> ChainResponse.of(SWEEP, Signals.withNoise(new double[432_000], 0.1, 1)))
                .isInstanceOf(Refused.class).hasMessageContaining("no sweep comes back");
        assertThatThrownBy(() -> new SineSweep(48_000, 1, 24_000, 8, 1))
                .isInstanceOf(Refused.class).hasMessageContaining("at most 22.08 kHz, got 1 Hz to 24 kHz");
    }
}
