package understudy.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Ten thousand hunts a circuit, with a fault drawn by the odds and one reading in twenty wrong: what the planner promises holds. */
class SimulatedHuntsTest {

    private static final int HUNTS = 10_000;
    private static final double WRONG = 0.05;
    /** Of a share of 95 % over 10 000 hunts, five standard deviations: chance alone fails once in millions. */
    private static final double SLACK = 5 * Math.sqrt(0.95 * 0.05 / HUNTS);

    record Named(String name, Routes routes) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Named> circuits() {
        return Stream.of(
                new Named("training bench", Routes.trainingBench(WRONG)),
                new Named("8 points", Routes.random(new Random(8), 8, WRONG, WRONG, 0.95)),
                new Named("12 points", Routes.random(new Random(12), 12, WRONG, WRONG, 0.95)));
    }

    /** What hunts took: each with its own fault and its own wrong readings, the same for every policy. */
    private record Taken(double meanMinutes, double standardError, double right) {

        static Taken by(Policy policy, Routes circuit, long seed) {
            Random random = new Random(seed);
            Map<List<Long>, Integer> chosen = new HashMap<>();
            double sum = 0;
            double squares = 0;
            int right = 0;
            for (int hunt = 0; hunt < HUNTS; hunt++) {
                int fault = drawn(circuit.prior(), random.nextDouble());
                Random readings = new Random(random.nextLong());
                Route route = circuit.route();
                Odds odds = circuit.odds();
                double minutes = 0;
                while (!route.ended(odds)) {
                    Odds now = odds;
                    int point = chosen.computeIfAbsent(Expectation.key(odds), key -> policy.next(now));
                    minutes += circuit.points().get(point).minutes();
                    boolean good = fault <= point == readings.nextDouble() >= WRONG;
                    odds = route.after(odds, point, good);
                }
                Route.Group convicted = route.likeliest(odds);
                right += fault >= convicted.first() && fault <= convicted.last() ? 1 : 0;
                sum += minutes;
                squares += minutes * minutes;
            }
            double mean = sum / HUNTS;
            return new Taken(mean, Math.sqrt((squares / HUNTS - mean * mean) / HUNTS), right / (double) HUNTS);
        }

        private static int drawn(double[] prior, double part) {
            double sum = Arrays.stream(prior).sum();
            double left = part * sum;
            for (int suspect = 0; suspect < prior.length; suspect++) {
                left -= prior[suspect];
                if (left < 0) {
                    return suspect;
                }
            }
            return prior.length - 1;
        }
    }

    @ParameterizedTest
    @MethodSource("circuits")
    void theRightOneIsConvictedAndSoonerThanByTheUsualWays(Named circuit) {
        Routes routes = circuit.routes();
        Taken planned = Taken.by(new Planner(routes.route()), routes, 1);
        Taken halving = Taken.by(new Halving(routes.route()), routes, 1);
        Taken endToEnd = Taken.by(new EndToEnd(routes.route()), routes, 1);
        String numbers = circuit + ": planned " + planned + ", halving " + halving + ", end to end " + endToEnd;
        assertThat(planned.right()).as(numbers).isGreaterThan(routes.confidence() - SLACK);
        assertThat(planned.meanMinutes()).as(numbers).isLessThan(halving.meanMinutes()).isLessThan(endToEnd.meanMinutes());
        // what is computed beforehand is what comes to pass, within four standard errors
        Expectation foretold = Expectation.of(routes.route(), routes.odds(), new Planner(routes.route()));
        assertThat(Math.abs(foretold.minutes() - planned.meanMinutes())).as(numbers).isLessThan(4 * planned.standardError());
    }
}
