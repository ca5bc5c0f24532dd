package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.measure.PatternTiming;
import understudy.measure.SignalReport;
import understudy.pattern.Pattern;
import understudy.pattern.PatternLibrary;
import understudy.rig.OutputScale;
import understudy.wave.Renderer;

/** What measuring says of the tool's own signal when line and card have 24 bits and no more. */
@Tag("real-time")
class TwentyFourBitsTest {

    private static final int RATE = 48_000;
    private static final int FADE_FRAMES = 480;
    private static final PlayerSettings THREE_SECONDS =
            PlayerSettings.DEFAULT.withTargetFill(LoopbackCard.BUSY_FILL).withDuration(Duration.ofSeconds(3));

    /**
     * Rounding a sine of 1 V peak to steps of 1.414 V / 2^23 leaves 20 lg(1/sqrt 2 / (1.414/2^23/sqrt 12)) = 143.2 dB, and
     * no more: 16 bits would leave 95 dB.
     */
    @Test
    void aSine() throws Exception {
        SignalReport report = SignalReport.of(heard(pattern("sine"), 997), RATE);
        System.out.printf("sine of 997 Hz over 24 bits: SINAD %.1f dB%n", report.tone().sinadDb());
        assertThat(report.tone().sinadDb()).isBetween(120.0, 144.0);
        assertThat(report.tone().frequencyHz()).isCloseTo(997, within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({"crank-60-2-hall, 3000", "crank-36-1-vr, 800"})
    void timingNoise(String id, double rpm) throws Exception {
        Pattern pattern = pattern(id);
        double[] heard = heard(pattern, rpm / 60);
        PatternTiming found = PatternTiming.of(heard, RATE, new PatternTiming.Asked(pattern, 0, rpm / 60, 3));
        System.out.printf("%s at %.0f rpm over 24 bits: %d edges, rms %.4f ns, worst %.4f ns%n", id, rpm,
                found.timing().missSeconds().length, found.timing().rmsSeconds() * 1e9, found.timing().worstSeconds() * 1e9);
        assertThat(found.timing().rmsSeconds()).isLessThan(1e-9);
    }

    private static Pattern pattern(String id) {
        return PatternLibrary.open().find(id).value().orElseThrow().withProfile(Optional.empty());
    }

    private static double[] heard(Pattern pattern, double hz) throws IOException, InterruptedException {
        try (LoopbackCard card = LoopbackCard.startWith24Bits()) {
            DeviceChoice choice = new DeviceChoice(card.output(), RATE, 2, SampleFormat.PCM24, false, true);
            double[] heard = card.hear(() -> new Renderer(pattern, RATE, hz, new AtomicReference<>(Renderer.startingHand(pattern))),
                    OutputScale.NOMINAL, choice, THREE_SECONDS)[0];
            for (double sample : heard) {
                double steps = sample * (1 << 23);
                assertThat(steps == Math.rint(steps)).as("a sample of 24 bits").isTrue();
            }
            return Arrays.copyOfRange(heard, FADE_FRAMES, heard.length - FADE_FRAMES);
        }
    }
}
