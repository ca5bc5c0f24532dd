package understudy.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.pattern.Pattern;
import understudy.pattern.PatternLibrary;
import understudy.pattern.PatternReader;

class SignalFrequencyTest {

    private static Pattern shipped(String id) {
        return PatternLibrary.open().find(id).value().orElseThrow();
    }

    private static double hz(Pattern pattern, int output, double speedHz) {
        return SignalFrequency.hz(pattern.outputs().get(output), speedHz).orElse(Double.NaN);
    }

    /** Tooth rate is rpm N/60, missing teeth counted; a cam or distributor turns once for two turns of the crank. */
    @ParameterizedTest
    @CsvSource({"crank-36-1-vr, 600, 360", "crank-60-2-vr, 1000, 1000", "crank-60-2-hall, 6000, 6000", "crank-36-2-2-2-vr, 600, 360",
        "output-shaft-17-vr, 1200, 340", "crank-36-1-cam-1-hall, 600, 360"})
    void shippedWheels(String id, double rpm, double hz) {
        assertThat(hz(shipped(id), 0, rpm / 60)).isCloseTo(hz, within(1e-9));
    }

    @Test
    void theCamOfOneLobeComesEverySecondTurn() {
        assertThat(hz(shipped("crank-36-1-cam-1-hall"), 1, 10)).isCloseTo(5, within(1e-9));
    }

    @Test
    void aToneHasItsOwnFrequencyAndAKnockHasNone() {
        Pattern sine = shipped("sine");
        assertThat(hz(sine, 0, 1000)).isCloseTo(1000, within(1e-9));
        assertThat(hz(shipped("knock-86mm"), 1, 10)).isNaN();
    }

    /** Teeth that share a grid only by chance: four lobes and one between two of them are five events, not eight positions. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "{teeth-at: [{angle: 0 deg, width: 5 deg}, {angle: 45 deg, width: 5 deg}, {angle: 90 deg, width: 5 deg}, {angle: 180 deg, width: 5 deg}, {angle: 270 deg, width: 5 deg}]} | 5",
        "{teeth: 4, missing: 1} | 4",
        "{over: 720 deg, teeth: 8, missing: 1} | 4",
        "{teeth: 24, widths: [3 deg, 12 deg, 3 deg, 12 deg, 3 deg, 12 deg, 3 deg, 12 deg, 3 deg, 12 deg, 3 deg, 12 deg, 3 deg, 12 deg, 3 deg, 12 deg, 3 deg, 12 deg, 3 deg, 12 deg, 3 deg, 12 deg, 3 deg, 12 deg]} | 24",
        "{edges-at: [10 deg, 50 deg, 100 deg, 220 deg, 300 deg, 310 deg]} | 3"})
    void eventsOfOneTurn(String wheel, double events) {
        Pattern pattern = PatternReader.read("t.yaml", """
                title: T
                purpose: P
                source: S
                speed: {default: 600 rpm, from: 60 rpm, to: 6000 rpm}
                outputs:
                  - name: w
                    wheel: %s
                    hall: {low: -1 V, high: 1 V}
                """.formatted(wheel)).value().orElseThrow();
        assertThat(hz(pattern, 0, 1)).isCloseTo(events, within(1e-9));
    }

    @Test
    void aPatternsOwnReadingIsItsSpeed() {
        Pattern ring = shipped("wheel-speed-44-vr");
        Reading reading = OwnReading.of(ring, ring.outputs().get(0)).orElseThrow();
        double speedHz = ring.speed().parseHz("50 km/h");
        assertThat(reading.unit()).isEqualTo(DisplayUnit.KMH);
        assertThat(reading.expected(hz(ring, 0, speedHz)).orElseThrow().value()).isCloseTo(50, within(1e-9));
        Pattern crank = shipped("crank-36-1-vr");
        assertThat(OwnReading.of(crank, crank.outputs().get(0)).orElseThrow().expected(480).orElseThrow().value())
                .isCloseTo(800, within(1e-9));
        Pattern knock = shipped("knock-86mm");
        assertThat(OwnReading.of(knock, knock.outputs().get(1))).isEmpty();
    }
}
