package understudy.wave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.pattern.Profile;

/** Every edge of a Hall wheel against closed-form geometry, after ideal reconstruction of 24-bit samples at 48 kHz. */
class EdgeTimingTest {
    private static final int RATE = 48_000;

    @ParameterizedTest
    @ValueSource(doubles = {60, 200, 799.3, 1000, 2000, 3000, 3517, 4000, 5000, 6000, 6613, 7000, 7200, 7500, 7700, 7777, 7900, 8000})
    void steadySpeed(double rpm) {
        double turnsPerFrame = rpm / 60 / RATE;
        int frames = (int) Math.max(20_000, 1.2 / turnsPerFrame);
        double[] volts = Patterns.to24Bits(
                Patterns.render(Patterns.renderer(Patterns.of(Patterns.hall(60, 2)), RATE, rpm / 60), frames, 256)[0]);
        Reconstruction signal = new Reconstruction(volts);
        double sum = 0;
        int edges = 0;
        double worst = 0;
        for (int edge = 0; edge < 120 * frames * turnsPerFrame; edge++) {
            double at = edge / 120.0 / turnsPerFrame;
            if (edge % 120 >= 116 || at < 500 || at > frames - 500) {
                continue;
            }
            double miss = signal.crossing(at, 0, 0.3) - at;
            sum += miss * miss;
            worst = Math.max(worst, Math.abs(miss));
            edges++;
        }
        double rmsNs = Math.sqrt(sum / edges) / RATE * 1e9;
        System.out.printf("%7.1f rpm  %5d edges  rms %.4f ns  worst %.4f ns%n", rpm, edges, rmsNs, worst / RATE * 1e9);
        assertThat(edges).isGreaterThan(100);
        assertThat(rmsNs).isLessThan(0.25);
    }
}
