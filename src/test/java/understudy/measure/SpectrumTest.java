package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static understudy.measure.Signals.RATE_HZ;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.refusal.Refused;

class SpectrumTest {

    /** Side lobes below -180 dB leave amplitude and place of a lone tone true to far better than 1e-7, on or off a bin. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.1, 0.25, 0.5, 0.77, 0.999})
    void amplitudeAndPlaceOfAToneAreTrueBetweenTheBins(double part) {
        double hz = (1000 + part) * RATE_HZ / 48_000;
        double[] tone = Signals.sampled(48_000, t -> 0.7 * Math.cos(2 * Math.PI * hz * t + 0.3));
        Spectrum.Peak peak = Spectrum.of(tone, RATE_HZ).peaks(1).get(0);
        assertThat(peak.amplitudeVolts()).isCloseTo(0.7, within(0.7e-7));
        assertThat(peak.frequencyHz()).isCloseTo(hz, within(1e-6));
    }

    /**
     * The window's own promise: beyond 8 bins from a tone nothing above -180 dB of its top, which a bin half aside
     * reads 0.8 dB too low.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.25, 0.5})
    void sideLobesLie180DecibelsDown(double part) {
        double hz = (2000 + part) * RATE_HZ / 8192;
        Spectrum spectrum = Spectrum.of(Signals.sampled(8192, t -> Math.cos(2 * Math.PI * hz * t)), RATE_HZ);
        assertThat(spectrum.bins()).isEqualTo(4097);
        for (int k = 0; k < spectrum.bins(); k++) {
            if (Math.abs(k - 2000 - part) > 8) {
                assertThat(20 * Math.log10(spectrum.rmsVolts(k) / spectrum.rmsVolts(2000))).as("bin " + k).isLessThan(-179.2);
            }
        }
    }

    /** What two tones a lobe apart hold is told apart; the weaker one 120 dB down is still true to 0.01 %. */
    @Test
    void weakLinesBesideStrongOnesAreTrue() {
        double[] tones = Signals.sampled(48_000, t -> Math.cos(2 * Math.PI * 1000.37 * t)
                + 1e-6 * Math.cos(2 * Math.PI * 1020.11 * t));
        List<Spectrum.Peak> peaks = Spectrum.of(tones, RATE_HZ).peaks(2);
        assertThat(peaks.get(1).frequencyHz()).isCloseTo(1020.11, within(0.01));
        assertThat(peaks.get(1).amplitudeVolts()).isCloseTo(1e-6, within(1e-10));
    }

    /** The variance of n independent samples scatters by sqrt(2/n); the window leaves n/2.63 of them: 4 sigma. */
    @Test
    void noiseSumsToItsVariance() {
        int n = 240_000;
        double[] noise = Signals.withNoise(new double[n], 0.01, 1);
        double tolerance = 4 * 0.5 * Math.sqrt(2.0 * 2.63 / n) * 0.01;
        assertThat(Spectrum.of(noise, RATE_HZ).bandRmsVolts(0, RATE_HZ / 2)).isCloseTo(0.01, within(tolerance));
        // white: half of the band holds half of the power
        assertThat(Spectrum.of(noise, RATE_HZ).bandRmsVolts(0, RATE_HZ / 4))
                .isCloseTo(0.01 / Math.sqrt(2), within(2 * tolerance));
    }

    /** A tone of 1 V with 1 mV and 0.5 mV of harmonics, another line of 2 mV and noise: closed form gives each figure. */
    @Test
    void qualityOfAToneOfKnownFaults() {
        double f = 3001.7;
        double noise = 1e-5;
        double[] volts = Signals.withNoise(Signals.sampled(240_000, t -> 0.2 + Math.sin(2 * Math.PI * f * t)
                + 1e-3 * Math.sin(4 * Math.PI * f * t + 1)
                + 0.5e-3 * Math.cos(18 * Math.PI * f * t) // order 9 folds: 27015 Hz to 20985 Hz
                + 2e-3 * Math.cos(2 * Math.PI * 1234.5 * t)), noise, 2);
        ToneQuality quality = ToneQuality.of(Spectrum.of(volts, RATE_HZ), RATE_HZ / 2);
        double harmonics = (1e-6 + 0.25e-6) / 2;
        double line = 4e-6 / 2;
        // the sums hold noise of 1e-10 V^2 against 2.6e-6: scatter far below 0.001 dB; harmonic lobes likewise
        assertThat(quality.frequencyHz()).isCloseTo(f, within(1e-4));
        assertThat(quality.amplitudeVolts()).isCloseTo(1, within(1e-6));
        assertThat(quality.sinadDb()).isCloseTo(10 * Math.log10(0.5 / (harmonics + line + noise * noise)), within(0.002));
        assertThat(quality.snrDb()).isCloseTo(10 * Math.log10(0.5 / (line + noise * noise)), within(0.002));
        assertThat(quality.thdDb()).isCloseTo(10 * Math.log10(harmonics / 0.5), within(0.01));
        assertThat(quality.sfdrDb()).isCloseTo(20 * Math.log10(1 / 2e-3), within(0.01));
        assertThat(quality.largestOther().frequencyHz()).isCloseTo(1234.5, within(0.01));
    }

    /** Rounding error is uniform and white to within a few hundredths of a bit when the tone sweeps all phases. */
    @ParameterizedTest
    @ValueSource(ints = {8, 12, 16, 24})
    void idealConvertersHaveTheirOwnNumberOfBits(int bits) {
        double[] tone = Signals.rounded(
                Signals.sampled(240_000, t -> 0.999 * Math.sin(2 * Math.PI * 997.123456 * t)), bits);
        assertThat(ToneQuality.of(Spectrum.of(tone, RATE_HZ), RATE_HZ / 2).enobBits(2)).isCloseTo(bits, within(0.03));
        assertThat(SineFit.fourParameters(tone, RATE_HZ).enobBits(2)).isCloseTo(bits, within(0.03));
    }

    /** Forty harmonics of one turn, and a line 130 dB down that belongs to none of them; without it nothing shows. */
    @Test
    void aLineBetweenHarmonicsIsFound() {
        double turn = 37.7123;
        double spur = 1e-6 / Math.sqrt(10);
        double[] comb = Signals.sampled(240_000, t -> {
            double sum = 0;
            for (int k = 1; k <= 40; k++) {
                sum += Math.cos(2 * Math.PI * k * 13 * turn * t + k) / k;
            }
            return sum;
        });
        // 24 bits would leave about -149 dB in all, and far less in a lobe; double rounding less still
        assertThat(Spectrum.of(comb, RATE_HZ).largestNotHarmonic(turn, 20_000).amplitudeVolts()).isLessThan(1e-8);
        double[] spoilt = comb.clone();
        for (int i = 0; i < spoilt.length; i++) {
            spoilt[i] += spur * Math.cos(2 * Math.PI * 137.5 * turn * i / RATE_HZ);
        }
        Spectrum.Peak found = Spectrum.of(spoilt, RATE_HZ).largestNotHarmonic(turn, 20_000);
        assertThat(found.frequencyHz()).isCloseTo(137.5 * turn, within(RATE_HZ / 240_000));
        assertThat(found.amplitudeVolts()).isCloseTo(spur, within(0.01 * spur));
    }

    @Test
    void whatCannotBeMeasuredIsSaid() {
        assertThatThrownBy(() -> Spectrum.of(new double[10], RATE_HZ))
                .isInstanceOf(Refused.class)
                .hasMessage("a spectrum needs at least 256 samples, got 10; record longer");
        double[] broken = new double[1000];
        broken[17] = Double.NaN;
        assertThatThrownBy(() -> Spectrum.of(broken, RATE_HZ)).hasMessageContaining("sample 17 is NaN");
        assertThatThrownBy(() -> Spectrum.of(new double[1000], -1)).hasMessageContaining("sample rate above 0 Hz, got -1 Hz");
        assertThatThrownBy(() -> ToneQuality.of(Spectrum.of(new double[1000], RATE_HZ), 20_000))
                .isInstanceOf(Refused.class).hasMessageContaining("no tone");
        assertThatThrownBy(() -> Spectrum.of(new double[48_000], RATE_HZ).largestNotHarmonic(5, 20_000))
                .isInstanceOf(Refused.class).hasMessageContaining("at least 4.8 s, got 1 s");
    }
}
