package understudy.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.pattern.Pattern;
import understudy.pattern.PatternLibrary;
import understudy.rig.OutputScale;
import understudy.wave.Renderer;

/**
 * From the pattern file through the engine and javax.sound into the virtual card, back through javax.sound, and
 * decoded as a module would: count the teeth between gaps, and tell the speed from them.
 */
@Tag("real-time")
class PlayedPatternTest {
    private static final int RATE = 48_000;
    private static final PlayerSettings TWO_SECONDS =
            PlayerSettings.DEFAULT.withTargetFill(LoopbackCard.BUSY_FILL).withDuration(Duration.ofSeconds(2));

    /** A Hall sensor's timing edge rises, a reluctor's crossing falls. */
    @ParameterizedTest
    @CsvSource({
        "crank-36-1-vr, 800, -1, 35, 2",
        "crank-60-2-vr, 250, -1, 58, 3",
        "crank-60-2-hall, 3000, 1, 58, 3",
        "crank-36-1-cam-1-hall, 6000, 1, 35, 2"
    })
    void comesBackWithItsSpeedItsTeethAndItsGap(String id, double rpm, int sign, int teeth, double gapPitches)
            throws Exception {
        Pattern pattern = PatternLibrary.open().find(id).value().orElseThrow();
        double[] heard = play(pattern, rpm / 60)[0];
        List<Double> crossings = crossings(heard, sign);
        List<Double> intervals = new ArrayList<>();
        for (int i = 1; i < crossings.size(); i++) {
            intervals.add(crossings.get(i) - crossings.get(i - 1));
        }
        double pitch = intervals.stream().sorted().toList().get(intervals.size() / 2);
        List<Integer> gaps = new ArrayList<>();
        for (int i = 0; i < intervals.size(); i++) {
            if (intervals.get(i) > 1.5 * pitch) {
                gaps.add(i);
            }
        }
        assertThat(gaps.size()).isGreaterThan(4);
        for (int g = 1; g < gaps.size(); g++) {
            assertThat(gaps.get(g) - gaps.get(g - 1)).isEqualTo(teeth);
            double turnFrames = crossings.get(gaps.get(g)) - crossings.get(gaps.get(g - 1));
            // a straight line between samples misses a crossing by less than a twentieth of a frame, alike each turn
            assertThat(RATE / turnFrames * 60).isCloseTo(rpm, within(rpm * 0.1 / turnFrames));
            // crossings beside a reluctor's gap lie up to a tenth of a pitch off their teeth's centres
            assertThat(intervals.get(gaps.get(g)) / pitch).isCloseTo(gapPitches, within(0.2));
        }
    }

    private static double[][] play(Pattern pattern, double hz) throws IOException, InterruptedException {
        try (LoopbackCard card = LoopbackCard.start()) {
            return card.hear(
                    () -> new Renderer(pattern, RATE, hz, new AtomicReference<>(Renderer.startingHand(pattern))),
                    OutputScale.NOMINAL, TWO_SECONDS);
        }
    }

    /** Crossings of 0 in one direction, outside the fades. */
    private static List<Double> crossings(double[] heard, int sign) {
        List<Double> found = new ArrayList<>();
        int fade = RATE / 50;
        for (int n = fade; n < heard.length - fade; n++) {
            double before = sign * heard[n - 1];
            double after = sign * heard[n];
            if (before < 0 && after >= 0) {
                found.add(n - after / (after - before));
            }
        }
        return found;
    }
}
