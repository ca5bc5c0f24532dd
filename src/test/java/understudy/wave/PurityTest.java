package understudy.wave;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.pattern.Signal;

/**
 * At a steady speed nothing below 20 kHz may be there but harmonics of one turn. The speeds are such that a prime
 * number of turns fills the analysed stretch exactly: harmonics fall on multiples of that number, and whatever
 * aliases falls beside them, with no window needed.
 */
class PurityTest {
    private static final int RATE = 48_000;
    private static final int FRAMES = 1 << 18;

    @ParameterizedTest
    @CsvSource({"hall, 73", "hall, 283", "hall, 569", "hall, 727", "reluctor, 73", "reluctor, 569", "reluctor, 727"})
    void nothingBetweenTheHarmonics(String sensor, int turns) {
        Signal signal = sensor.equals("hall") ? Patterns.hall(60, 2) : Patterns.reluctor(60, 2, 0.3);
        double hz = (double) turns * RATE / FRAMES;
        VoltSource source = Patterns.renderer(Patterns.of(signal), RATE, hz);
        Patterns.render(source, 4 * RATE / 10, 256);
        double[] volts = Patterns.to24Bits(Patterns.render(source, FRAMES, 256)[0]);
        double[] power = powerSpectrum(volts);
        double strongest = 0;
        double stranger = 0;
        for (int bin = 1; bin < 20_000L * FRAMES / RATE; bin++) {
            if (bin % turns == 0) {
                strongest = Math.max(strongest, power[bin]);
            } else {
                stranger = Math.max(stranger, power[bin]);
            }
        }
        assertThat(10 * Math.log10(stranger / strongest)).isLessThan(-120);
    }

    /** A plain radix-2 transform (Cooley, Tukey 1965), so that the judge is none of the product's own. */
    private static double[] powerSpectrum(double[] samples) {
        int n = samples.length;
        double[] re = new double[n];
        double[] im = new double[n];
        int bits = Integer.numberOfTrailingZeros(n);
        for (int i = 0; i < n; i++) {
            re[Integer.reverse(i) >>> (32 - bits)] = samples[i];
        }
        for (int size = 2; size <= n; size *= 2) {
            for (int k = 0; k < size / 2; k++) {
                double c = Math.cos(2 * Math.PI * k / size);
                double s = -Math.sin(2 * Math.PI * k / size);
                for (int at = k; at < n; at += size) {
                    int other = at + size / 2;
                    double x = re[other] * c - im[other] * s;
                    double y = re[other] * s + im[other] * c;
                    re[other] = re[at] - x;
                    im[other] = im[at] - y;
                    re[at] += x;
                    im[at] += y;
                }
            }
        }
        double[] power = new double[n / 2];
        for (int i = 0; i < power.length; i++) {
            power[i] = re[i] * re[i] + im[i] * im[i];
        }
        return power;
    }
}
