package understudy.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import understudy.refusal.Location;

/** Displays with one thing wrong with them, played on a module of 0.1577 km/h for each Hz: a ring of 44 on 1.927 m. */
class LearnedTest {

    private static final double PER_HZ = 3.6 * 1.927 / 44;

    private static List<Pair> pairs(DoubleUnaryOperator display, double... frequenciesHz) {
        List<Pair> pairs = new ArrayList<>();
        for (double hz : frequenciesHz) {
            pairs.add(new Pair(hz, display.applyAsDouble(hz)));
        }
        return pairs;
    }

    private static double rounded(double hz) {
        return Math.floor(PER_HZ * hz + 0.5);
    }

    private static Learned learn(List<Pair> pairs) {
        return Learned.of(pairs, DisplayUnit.KMH, OptionalDouble.empty());
    }

    @Test
    void aGoodDisplayHasNothingOddAboutIt() {
        Learned learned = learn(pairs(LearnedTest::rounded, 130, 320, 510, 760));
        assertThat(learned.findings()).isEmpty();
        assertThat(learned.step()).isEqualTo(1);
        assertThat(learned.fit().factor().hold(PER_HZ)).isTrue();
        Reading kept = learned.reading();
        assertThat(ReadingReader.read(kept.text(), Location.named("kept")).value()).contains(kept);
        assertThat(kept.expected(634).orElseThrow().holds(100)).isTrue();
    }

    /** Never a false alarm: whatever rounding does is explained by rounding. */
    @Test
    void roundingAloneIsNeverOdd() {
        Random chance = new Random(31);
        for (int trial = 0; trial < 2000; trial++) {
            double perHz = 0.05 + chance.nextDouble();
            double offset = chance.nextBoolean() ? 0 : 6 * chance.nextDouble() - 3;
            double[] hz = chance.doubles(2 + chance.nextInt(10), 30, 900).toArray();
            List<Pair> pairs = pairs(f -> Math.floor(offset + perHz * f + 0.5), hz);
            if (pairs.stream().mapToDouble(Pair::shown).distinct().count() > 1) {
                assertThat(learn(pairs).findings()).isEmpty();
            }
        }
    }

    @Test
    void aDecimalPlaceIsAStepOfATenth() {
        assertThat(learn(pairs(hz -> Math.rint(PER_HZ * hz * 10) / 10, 130, 320, 510)).step()).isEqualTo(0.1);
    }

    @Test
    void stepsOfFive() {
        Learned learned = learn(pairs(hz -> 5 * Math.rint(PER_HZ * hz / 5), 130, 210, 320, 370, 510, 760));
        assertThat(learned.findings()).containsExactly(new DisplayTrait.CoarseSteps(5));
        assertThat(learned.step()).isEqualTo(5);
        assertThat(learned.fit().perHz().hold(PER_HZ)).isTrue();
    }

    @Test
    void aLimitAtTheTop() {
        Learned learned = learn(pairs(hz -> Math.min(60, rounded(hz)), 130, 210, 320, 510, 760, 900));
        // 380.4 Hz are 60 km/h
        assertThat(learned.findings()).containsExactly(new DisplayTrait.Stops(510, 60));
        assertThat(learned.used()).hasSize(3);
        assertThat(learned.fit().perHz().hold(PER_HZ)).isTrue();
    }

    @Test
    void nothingAboveALimit() {
        Learned learned = learn(pairs(hz -> hz > 600 ? 0 : rounded(hz), 130, 320, 510, 760));
        assertThat(learned.findings()).containsExactly(new DisplayTrait.Stops(760, 0));
    }

    @Test
    void nothingAtTheBottom() {
        Learned learned = learn(pairs(hz -> hz < 50 ? 0 : rounded(hz), 10, 40, 130, 320, 510));
        assertThat(learned.findings()).containsExactly(new DisplayTrait.Starts(40));
        assertThat(learned.fit().factor().hold(PER_HZ)).isTrue();
    }

    /** A filter that reaches four fifths of each step before it is read: rising readings are short, falling ones long. */
    @Test
    void aDisplayThatAverages() {
        double[] hz = {200, 300, 400, 500, 600, 700, 600, 500, 400, 300, 200};
        List<Pair> pairs = new ArrayList<>();
        double inside = PER_HZ * 100;
        for (double each : hz) {
            inside += 0.8 * (PER_HZ * each - inside);
            pairs.add(new Pair(each, Math.rint(inside)));
        }
        Learned learned = learn(pairs);
        // a step of 100 Hz is 15.77 km/h. A fifth of what is still to go is left each time: rising it settles at 0.2/0.8 of
        // 15.77, 3.9 too low, from 4.4 at first; falling at 3.9 too high, from 2.4 at first. Between them 6.3 to 8.3, and
        // rounding half a step on either side
        assertThat(learned.findings()).hasSize(1).first().isInstanceOfSatisfying(DisplayTrait.Lags.class,
                lags -> assertThat(lags.shown()).isBetween(5.3, 9.3));
        assertThat(learned.fit().basis()).isEqualTo(ScaleFit.Basis.LAG);
        assertThat(learned.fit().perHz().hold(PER_HZ)).isTrue();
    }

    @Test
    void onePairThatDoesNotFit() {
        Random chance = new Random(32);
        for (int trial = 0; trial < 1000; trial++) {
            List<Pair> pairs = pairs(LearnedTest::rounded, 130, 210, 320, 370, 510, 760);
            int which = chance.nextInt(pairs.size());
            double away = (chance.nextBoolean() ? 1 : -1) * (6 + chance.nextInt(30));
            Pair good = pairs.get(which);
            Pair wrong = new Pair(good.frequencyHz(), Math.max(1, good.shown() + away));
            pairs.set(which, wrong);
            Learned learned = learn(pairs);
            assertThat(learned.findings()).as("%s", pairs).hasSize(1).first().isInstanceOfSatisfying(DisplayTrait.Outlier.class, outlier -> {
                assertThat(outlier.pair()).isEqualTo(wrong);
                // the line of the others is known to a step within, and to two beyond them
                assertThat(outlier.away()).isCloseTo(wrong.shown() - PER_HZ * wrong.frequencyHz(), within(2.0));
            });
            assertThat(learned.fit().perHz().hold(PER_HZ)).isTrue();
        }
    }

    @Test
    void twoPairsThatDoNotFitAmongSeven() {
        List<Pair> pairs = pairs(LearnedTest::rounded, 130, 210, 320, 370, 510, 640, 760);
        pairs.set(1, new Pair(210, 60));
        pairs.set(4, new Pair(510, 20));
        assertThat(learn(pairs).findings()).extracting(finding -> ((DisplayTrait.Outlier) finding).pair())
                .containsExactlyInAnyOrder(new Pair(210, 60), new Pair(510, 20));
    }

    @Test
    void amongThreeItCantBeToldWhich() {
        Learned learned = learn(List.of(new Pair(100, 16), new Pair(200, 45), new Pair(300, 47)));
        assertThat(learned.findings()).hasSize(2);
        assertThat(learned.findings().get(0)).isInstanceOfSatisfying(DisplayTrait.OneOfThese.class, some ->
                assertThat(some.pairs()).hasSize(3));
        assertThat(learned.fit().perHz().hold(PER_HZ)).as("with limits as wide as that deserves").isTrue();
    }

    @Test
    void numbersThatWaver() {
        Random chance = new Random(33);
        Learned learned = learn(pairs(hz -> Math.rint(PER_HZ * hz + 3 * chance.nextGaussian()),
                130, 170, 210, 280, 320, 370, 430, 510, 640, 700, 760));
        assertThat(learned.findings()).hasSize(1).first().isInstanceOf(DisplayTrait.Wavers.class);
        assertThat(learned.fit().perHz().hold(PER_HZ)).isTrue();
    }

    @Test
    void whatHasNoScaleIsRefused() {
        assertThatThrownBy(() -> learn(pairs(hz -> 0, 100, 200, 300))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> learn(pairs(LearnedTest::rounded, 100, 100))).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> learn(pairs(LearnedTest::rounded, 100))).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void whatAScaleImplies() {
        Learned learned = learn(pairs(LearnedTest::rounded, 130, 320, 510, 760));
        Estimate perKm = Implied.pulsesPerKm(learned).orElseThrow();
        // 44 teeth for each 1.927 m
        assertThat(perKm.hold(44 / 0.001927)).isTrue();
        assertThat(Implied.teeth(perKm, 1.927)).contains(44).doesNotContain(41, 47);
        assertThat(Implied.eventsPerTurn(learned)).isEmpty();
    }

    @Test
    void cylindersOfAnEngine() {
        // three events a turn: 20 rpm for each Hz
        Learned learned = Learned.of(pairs(hz -> Math.rint(20 * hz), 31.3, 77.7, 200.1), DisplayUnit.RPM, OptionalDouble.empty());
        assertThat(Implied.cylinders(Implied.eventsPerTurn(learned).orElseThrow())).containsExactly(6);
    }

    @Test
    void twiceAndHalfTheDeclaredScale() {
        Reading declared = ReadingReader.read("shows: wheel speed, unit: km/h, teeth: 44, rolls: 1.927 m", Location.named("t")).value().orElseThrow();
        for (double times : new double[] {0.5, 1, 2, 1.3}) {
            Learned learned = learn(pairs(hz -> Math.rint(times * PER_HZ * hz), 130, 320, 510, 760));
            Implied.Beside beside = Implied.beside(learned, declared).orElseThrow();
            assertThat(beside.ratio().hold(times)).isTrue();
            for (double other : new double[] {0.5, 1, 2}) {
                assertThat(beside.maybe(other)).isEqualTo(other == times);
            }
        }
    }
}
