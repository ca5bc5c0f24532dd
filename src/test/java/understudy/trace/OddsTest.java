package understudy.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class OddsTest {

    private record Reading(int point, boolean good) {}

    /** A product of some 20 factors and a sum of some 10, each rounded to 1.1e-16, through a logarithm of at most 100. */
    private static final double ROUNDING = 1e-13;

    @Property(tries = 300)
    void oddsAreBayesRuleWhateverTheOrder(@ForAll long seed, @ForAll @IntRange(min = 2, max = 9) int points,
            @ForAll @IntRange(max = 20) int count) {
        Random random = new Random(seed);
        Routes path = Routes.random(random, points, 0.01 + 0.3 * random.nextDouble(), 0.01 + 0.3 * random.nextDouble(), 0.95);
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            readings.add(new Reading(random.nextInt(points), random.nextBoolean()));
        }
        double[] expected = byDefinition(path, readings);
        for (int order = 0; order < 3; order++) {
            Odds odds = path.odds();
            for (Reading reading : readings) {
                odds = path.route().after(odds, reading.point(), reading.good());
            }
            for (int suspect = 0; suspect <= points; suspect++) {
                assertThat(odds.probability(suspect)).isCloseTo(expected[suspect], within(ROUNDING));
            }
            Collections.shuffle(readings, random);
        }
    }

    /** The joint probability of each suspect and all readings, by plain multiplication, normalised. */
    private static double[] byDefinition(Routes path, List<Reading> readings) {
        double[] joint = path.prior().clone();
        for (int suspect = 0; suspect < joint.length; suspect++) {
            for (Reading reading : readings) {
                Access access = path.points().get(reading.point());
                boolean wayIsSound = suspect <= reading.point();
                double bad = wayIsSound ? access.wronglyBad() : 1 - access.wronglyGood();
                joint[suspect] *= reading.good() ? 1 - bad : bad;
            }
        }
        double sum = Arrays.stream(joint).sum();
        return Arrays.stream(joint).map(one -> one / sum).toArray();
    }

    @Test
    void anEqualLikelihoodTellsNothingAndASharpOneTells() {
        Odds odds = Odds.of(1, 1, 2);
        assertThat(odds.after(0.3, 0.3, 0.3).probability(2)).isCloseTo(0.5, within(ROUNDING));
        // 1 x 0.1, 1 x 0.8, 2 x 0.1
        assertThat(odds.after(0.1, 0.8, 0.1).probability(1)).isCloseTo(0.8 / 1.1, within(ROUNDING));
        assertThat(odds.after(0.1, 0.8, 0.1).mostLikely()).isEqualTo(1);
    }

    @Test
    void hundredsOfReadingsThatPointOneWayCanBeTakenBack() {
        Access access = new Access(1, true, 0.05, 0.05);
        Odds odds = Odds.of(1, 3);
        for (int i = 0; i < 400; i++) { // 19^400 is far beyond what a double holds
            odds = odds.after(0, true, access);
        }
        assertThat(odds.probability(0)).isEqualTo(1);
        for (int i = 0; i < 400; i++) {
            odds = odds.after(0, false, access);
        }
        // 800 sums of a logarithm of up to 1200, each rounded to 1.1e-13
        assertThat(odds.probability(1)).isCloseTo(0.75, within(1e-10));
    }

    @Test
    void evidenceThatNobodyCanHaveLeftIsRecognised() {
        Access neverWrong = new Access(1, true, 0, 0);
        Odds odds = Odds.of(1, 1, 1).after(1, false, neverWrong).after(0, true, neverWrong);
        assertThat(odds.possible()).isFalse();
        assertThat(new double[] {odds.probability(0), odds.probability(1), odds.probability(2)}).isEqualTo(new double[3]);
        assertThat(odds.after(0, true, neverWrong).possible()).isFalse();
    }

    @Test
    void oddsThatCannotBeAreRefused() {
        assertThatThrownBy(() -> Odds.of(0, 0)).hasMessageContaining("one suspect at least");
        assertThatThrownBy(() -> Odds.of(1, -1)).hasMessageContaining("-1.0");
        assertThatThrownBy(() -> Odds.of(1, Double.NaN)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> Odds.of(1, 1).after(1, 1, 1)).hasMessageContaining("3 likelihoods for 2");
    }
}
