package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import understudy.measure.TestWheel.Motion;

/** Wheels of any make on exact instants, no samples: what repeats is what was drawn. */
class RhythmTest {

    /** One gap or two, begun anywhere in the turn, slowing down or speeding up, each instant off by up to 1 % of a pitch. */
    @Property(tries = 1000)
    void anyGappedWheelAtAnyRamp(
            @ForAll @IntRange(min = 14, max = 120) int places,
            @ForAll @IntRange(min = 1, max = 3) int missing,
            @ForAll @IntRange(min = 0, max = 3) int alsoMissing,
            @ForAll @DoubleRange(min = 0.2, max = 5) double speedUp,
            @ForAll @IntRange(min = 0, max = 119) int begin,
            @ForAll long seed) {
        List<Integer> teeth = new ArrayList<>();
        int second = places / 3; // gaps a third of a turn apart, so that both have plain neighbours
        for (int place = 0; place < places - missing; place++) {
            if (place < second || place >= second + alsoMissing) {
                teeth.add(place);
            }
        }
        int n = teeth.size();
        int turns = 8;
        Motion motion = new Motion(10, 10 * speedUp, turns / (5 * (1 + speedUp)));
        Random random = new Random(seed);
        double[] instants = IntStream.range(begin % n, begin % n + (turns - 2) * n)
                .mapToDouble(i -> {
                    double place = teeth.get(i % n) + 0.01 * (2 * random.nextDouble() - 1);
                    return motion.when(i / n + place / places);
                }).toArray();
        Rhythm rhythm = Rhythm.of(instants);
        // 14 places with 3 and 3 missing look alike twice a turn: the smallest part that repeats, by trying
        int part = IntStream.rangeClosed(1, n).filter(p -> n % p == 0 && IntStream.range(0, n)
                .allMatch(i -> interval(teeth, places, i) == interval(teeth, places, i + p))).findFirst().orElseThrow();
        assertThat(rhythm.events()).isEqualTo(part);
        assertThat(rhythm.places()).isEqualTo(places * part / n);
        // three pitches' errors of 2 % at most, extrapolated to the middle of a gap of 4, by 3 at most, and halved by the
        // median over turns
        double longest = 1 + Math.max(missing, alsoMissing);
        assertThat(rhythm.intervals()[part - 1]).isCloseTo(longest, within(0.15));
        assertThat(Arrays.stream(rhythm.intervals()).max().orElseThrow()).isCloseTo(longest, within(0.15));
    }

    private static int interval(List<Integer> teeth, int places, int i) {
        int n = teeth.size();
        return teeth.get((i + 1) % n) - teeth.get(i % n) + ((i + 1) % n == 0 ? places : 0);
    }

    /** Without a gap nothing repeats, whatever the speed does and however uneven the teeth are by up to 5 %. */
    @Property(tries = 1000)
    void evenRingsShowNoTurn(
            @ForAll @IntRange(min = 20, max = 150) int teeth,
            @ForAll @DoubleRange(min = 0.2, max = 5) double speedUp,
            @ForAll long seed) {
        Motion motion = new Motion(10, 10 * speedUp, 4 / (1 + speedUp));
        Random random = new Random(seed);
        double[] uneven = random.doubles(teeth, -0.05, 0.05).toArray();
        double[] instants = IntStream.range(0, 8 * teeth)
                .mapToDouble(i -> motion.when((i + uneven[i % teeth]) / teeth)).toArray();
        assertThat(Rhythm.of(instants).events()).isZero();
    }
}
