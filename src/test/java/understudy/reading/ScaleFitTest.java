package understudy.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** How often the stated limits hold the truth, and how wide they are beside the narrowest that could. */
class ScaleFitTest {

    private static final int TRIALS = 10_000;

    /** A module as it comes: some scale, an offset or none, and somebody who picks frequencies. */
    private record Module(double perHz, double offset, List<Pair> pairs) {
        static Module random(Random chance, int count, double waverSteps) {
            double perHz = 0.02 * StrictMath.exp(chance.nextDouble() * StrictMath.log(100)); // 0.02 to 2 for each Hz
            double offset = chance.nextBoolean() ? 0 : 10 * chance.nextDouble() - 5;
            List<Pair> pairs = new ArrayList<>();
            double topHz = (20 + 180 * chance.nextDouble()) / perHz; // shows 20 to 200 at the top
            for (int i = 0; i < count; i++) {
                double hz = topHz * (0.05 + 0.95 * chance.nextDouble());
                double shown = offset + perHz * hz + waverSteps * chance.nextGaussian();
                pairs.add(new Pair(hz, Math.floor(shown + 0.5)));
            }
            return new Module(perHz, offset, pairs);
        }
    }

    /**
     * The narrowest limits of the slope that hold the truth 95 times of 100, if rounding errors are spread evenly: all
     * lines that will do are then equally likely. By summing, slope by slope, how many offsets will do.
     */
    private static double[] ideal(Module module, double low, double high) {
        int cells = 1000;
        double[] likely = new double[cells];
        double all = 0;
        for (int i = 0; i < cells; i++) {
            double perHz = low + (i + 0.5) * (high - low) / cells;
            double least = Double.NEGATIVE_INFINITY;
            double most = Double.POSITIVE_INFINITY;
            for (Pair pair : module.pairs()) {
                least = Math.max(least, pair.shown() - 0.5 - perHz * pair.frequencyHz());
                most = Math.min(most, pair.shown() + 0.5 - perHz * pair.frequencyHz());
            }
            likely[i] = Math.max(0, most - least);
            all += likely[i];
        }
        double sum = 0;
        double from = Double.NaN;
        for (int i = 0; i < cells; i++) {
            sum += likely[i];
            if (Double.isNaN(from) && sum >= 0.025 * all) {
                from = low + i * (high - low) / cells;
            }
            if (sum >= 0.975 * all) {
                return new double[] {from, low + (i + 1) * (high - low) / cells};
            }
        }
        throw new AssertionError("nothing is likely");
    }

    @Test
    void threeRoundedReadingsHoldTheTruth() {
        Random chance = new Random(2026);
        int slopes = 0;
        int offsets = 0;
        int shown = 0;
        int zeros = 0;
        int zerosHeld = 0;
        int idealHeld = 0;
        double width = 0;
        double idealWidth = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            Module module = Module.random(chance, 3, 0);
            ScaleFit fit = ScaleFit.of(module.pairs(), 1);
            slopes += fit.perHz().hold(module.perHz()) ? 1 : 0;
            offsets += fit.offset().hold(module.offset()) ? 1 : 0;
            double hz = fit.fromHz() + chance.nextDouble() * (fit.toHz() - fit.fromHz());
            shown += Math.abs(fit.shown(hz) - module.offset() - module.perHz() * hz) <= fit.away() ? 1 : 0;
            if (module.offset() == 0) {
                zeros++;
                zerosHeld += fit.throughZero().filter(slope -> slope.hold(module.perHz())).isPresent() ? 1 : 0;
            }
            double[] narrowest = ideal(module, fit.perHz().low(), fit.perHz().high());
            idealHeld += module.perHz() >= narrowest[0] && module.perHz() <= narrowest[1] ? 1 : 0;
            // relative to the slope, or the modules with the largest slopes would count for all
            width += (fit.perHz().high() - fit.perHz().low()) / module.perHz();
            idealWidth += (narrowest[1] - narrowest[0]) / module.perHz();
        }
        // a display that only rounds can't lie outside, so these hold always, not just 19 times of 20
        assertThat(slopes).isEqualTo(TRIALS);
        assertThat(offsets).isEqualTo(TRIALS);
        assertThat(shown).isEqualTo(TRIALS);
        assertThat(zerosHeld).isEqualTo(zeros).isGreaterThan(TRIALS / 3);
        // four standard errors of a share of 95 %: 0.87 %; a cell more on either side adds up to 0.3 %
        assertThat(idealHeld / (double) TRIALS).isBetween(0.95 - 0.0087, 0.95 + 0.0087 + 0.003);
        // for two readings the ends of a triangle beside its middle 95 %: 1 / (1 - sqrt(0.05)) = 1.288; a third one only
        // cuts corners off, so that they lie closer to the middle
        assertThat(width / idealWidth).isBetween(1.0, 1.288);
    }

    /** A display that cuts off is half a step too low everywhere, which is an offset, and must not pass for a smaller slope. */
    @Test
    void readingsThatAreCutOffHoldTheTruth() {
        Random chance = new Random(2028);
        for (int trial = 0; trial < TRIALS; trial++) {
            Module module = Module.random(chance, 3, 0);
            List<Pair> cut = module.pairs().stream()
                    .map(pair -> new Pair(pair.frequencyHz(), Math.floor(module.perHz() * pair.frequencyHz()))).toList();
            ScaleFit fit = ScaleFit.of(cut, 1);
            assertThat(fit.perHz().hold(module.perHz())).isTrue();
            assertThat(fit.offset().hold(-0.5)).isTrue();
            assertThat(fit.throughZero().orElseThrow().hold(module.perHz())).isTrue();
        }
    }

    /** Where it wavers by two steps each way, limits by scatter; and the first guess, rounding alone, is hardly ever possible. */
    @Test
    void waveringReadingsHoldTheTruth() {
        Random chance = new Random(2027);
        int scattered = 0;
        int held = 0;
        int trials = 4000;
        for (int trial = 0; trial < trials; trial++) {
            Module module = Module.random(chance, 8, 2);
            ScaleFit fit = ScaleFit.of(module.pairs(), 1);
            scattered += fit.basis() == ScaleFit.Basis.SCATTER ? 1 : 0;
            held += fit.perHz().hold(module.perHz()) ? 1 : 0;
        }
        assertThat(scattered).isGreaterThan(trials * 99 / 100);
        // four standard errors of a share of 95 % are 1.38 %
        assertThat(held / (double) trials).isGreaterThan(0.95 - 0.0138);
    }

    /** Least squares by hand: 1, 3, 2, 6 at 1, 2, 3, 4 has the slope 1.4, the level 3, and a rest of 14 - 1.96 x 5 = 4.2. */
    @Test
    void leastSquaresByHand() {
        ScaleFit fit = ScaleFit.scattered(List.of(new Pair(1, 1), new Pair(2, 3), new Pair(3, 2), new Pair(4, 6)), 0.1);
        // Student's t for 2 degrees of freedom, 97.5 %, from a table: 4.303
        double away = 4.303 * Math.sqrt(4.2 / 2) / Math.sqrt(5);
        assertThat(fit.perHz().value()).isCloseTo(1.4, within(1e-12));
        assertThat(fit.perHz().high() - 1.4).isCloseTo(away, within(0.001));
        assertThat(fit.offset().value()).isCloseTo(3 - 1.4 * 2.5, within(1e-12));
    }

    @Test
    void oneFrequencyHasNoSlope() {
        assertThatThrownBy(() -> ScaleFit.of(List.of(new Pair(5, 1), new Pair(5, 2)), 1)).isInstanceOf(IllegalArgumentException.class);
    }
}
