package understudy.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.reading.DisplayUnit;
import understudy.reading.Estimate;
import understudy.reading.Learned;
import understudy.reading.Pair;
import understudy.reading.Reading;
import understudy.reading.Scale;
import understudy.reading.Tolerance;

/** What was learned of a display is there again for the same vehicle. */
class LearnedScalesTest {

    private static final Instant NOON = JobSamples.NOON;

    @TempDir
    private Path folder;

    /** No two numbers alike, so that columns that change places are seen. */
    private static LearnedScale scale(String vehicle, String circuitId, Instant at) {
        return new LearnedScale(vehicle, circuitId, new Reading(Reading.Kind.LEARNED, DisplayUnit.MPH, new Scale.Line(0.1, -0.25),
                new Tolerance(1.5, 0.75), 0.5), new Estimate(0.09, 0.11, 0.12), new Estimate(-0.4, -0.3, 0.2), at, "job \"Größe\"");
    }

    @Test
    void theyComeBackAsTheyWereTheNewestFirst() {
        LearnedScale old = scale("Fieldhand 4, Bench", "speedometer", NOON);
        LearnedScale newer = scale("fieldhand 4,  bench", "speedometer", NOON.plusMillis(500));
        LearnedScale newest = scale("FIELDHAND 4, bench", "wheel", NOON.plusSeconds(1));
        try (Store store = Store.open(folder.resolve("understudy.db"))) {
            for (LearnedScale one : List.of(newest, old, newer, scale("another", "speedometer", NOON))) {
                store.learnedScales().keep(one);
            }
        }
        try (Store store = Store.open(folder.resolve("understudy.db"))) {
            assertThat(store.learnedScales().forVehicle("Fieldhand 4, bench")).isEqualTo(List.of(newest, newer, old));
            assertThat(store.learnedScales().forVehicle("Fieldhand 4, bench", "speedometer")).isEqualTo(List.of(newer, old));
            assertThat(store.learnedScales().forVehicle("Fieldhand 4, bench", "crank")).isEmpty();
            assertThat(store.learnedScales().forVehicle("Fieldhand 5")).isEmpty();
        }
    }

    @Test
    void whatWasLearnedIsExpectedNextTime() {
        // a display that shows half a km/h for each event a second, without an offset
        Learned learned = Learned.of(List.of(new Pair(20, 10), new Pair(100, 50), new Pair(200, 100)), DisplayUnit.KMH,
                OptionalDouble.of(1));
        try (Store store = Store.open(folder.resolve("understudy.db"))) {
            store.learnedScales().keep(LearnedScale.of("Fieldhand 4", "speedometer", learned, NOON, "sweep"));
            LearnedScale kept = store.learnedScales().forVehicle("fieldhand 4").get(0);
            assertThat(kept.reading()).isEqualTo(learned.reading());
            assertThat(kept.perHz()).isEqualTo(learned.fit().factor());
            assertThat(kept.perHz().hold(0.5)).isTrue();
            assertThat(kept.offset()).isEqualTo(new Estimate(0, 0, 0));
            assertThat(kept.reading().expected(160).orElseThrow().holds(80)).isTrue();
        }
    }

    @Test
    void itBelongsToAVehicle() {
        assertThatThrownBy(() -> scale(" ", "speedometer", NOON)).isInstanceOf(IllegalArgumentException.class);
    }
}
