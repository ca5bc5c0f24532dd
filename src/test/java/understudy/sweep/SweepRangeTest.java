package understudy.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import understudy.reading.DisplayUnit;
import understudy.reading.Expected;
import understudy.trace.Answer;

class SweepRangeTest {

    /** At so many turns a second the display should show ten times as much, give or take 2. */
    private static SweepRow row(double speedHz, Optional<Answer> seen) {
        double due = 10 * speedHz;
        return new SweepRow(Instant.EPOCH, speedHz, speedHz, new Expected(due, due - 2, due + 2, 1, DisplayUnit.KMH), seen);
    }

    private static SweepRow shown(double speedHz, double shown) {
        return row(speedHz, Optional.of(Answer.value(shown)));
    }

    @Test
    void noneWhereNothingIsRight() {
        assertThat(SweepRange.of(List.of())).isEmpty();
        assertThat(SweepRange.of(List.of(shown(1, 20), row(2, Optional.of(Answer.of(Answer.Kind.NOTHING)))))).isEmpty();
    }

    @Test
    void whatWasSkippedOrCannotTellNeitherMakesNorBreaksARun() {
        SweepRow cannotTell = shown(0.1, 0); // 1 give or take 2: nothing would be right, too
        SweepRow skipped = row(3, Optional.empty());
        assertThat(SweepRange.of(List.of(cannotTell, skipped))).isEmpty();
        assertThat(SweepRange.of(List.of(cannotTell, shown(2, 20), skipped, shown(4, 41))))
                .contains(new SweepRange(2, 4, 2, Optional.empty(), Optional.empty(), 0));
    }

    @Test
    void aSpeedIsRightOnlyIfEveryReadingThereIs() {
        SweepRow lagging = shown(3, 36);
        assertThat(SweepRange.of(List.of(shown(1, 10), shown(2, 20), shown(3, 30), shown(4, 40), lagging, shown(2, 22))))
                .contains(new SweepRange(1, 2, 3, Optional.empty(), Optional.of(lagging), 2));
    }

    /** Against every run there is, tried one by one. */
    @Test
    void theWidestRun() {
        Random chance = new Random(7);
        for (int trial = 0; trial < 2000; trial++) {
            int count = 1 + chance.nextInt(9);
            double[] speeds = new double[count];
            boolean[] right = new boolean[count];
            List<SweepRow> rows = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                speeds[i] = (i == 0 ? 1 : speeds[i - 1]) + 1 + chance.nextInt(3);
                right[i] = chance.nextInt(3) > 0;
                rows.add(chance.nextInt(rows.size() + 1), shown(speeds[i], 10 * speeds[i] + (right[i] ? 1 : 5)));
            }
            double widest = -1;
            for (int from = 0; from < count; from++) {
                for (int to = from; to < count && right[to]; to++) {
                    widest = Math.max(widest, right[from] ? speeds[to] - speeds[from] : -1);
                }
            }
            Optional<SweepRange> found = SweepRange.of(rows);
            assertThat(found.isPresent()).isEqualTo(widest >= 0);
            if (found.isPresent()) {
                assertThat(found.get().toHz() - found.get().fromHz()).isEqualTo(widest);
                for (int i = 0; i < count; i++) {
                    boolean within = speeds[i] >= found.get().fromHz() && speeds[i] <= found.get().toHz();
                    assertThat(!within || right[i]).isTrue();
                }
            }
        }
    }
}
