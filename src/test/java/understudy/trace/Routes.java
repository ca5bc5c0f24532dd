package understudy.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** CircuitFiles for tests of the planner. */
record Routes(List<Access> points, double[] prior, double confidence) {

    /** The training bench: sensor connector, tunnel connector, bulkhead connector, splice, module pin; wire between. */
    static Routes trainingBench(double wrong) {
        double[] minutes = {3, 12, 6, 15, 10};
        List<Access> points = new ArrayList<>();
        for (double reach : minutes) {
            points.add(new Access(reach, true, wrong, wrong));
        }
        return new Routes(points, new double[] {10, 6, 6, 2, 4, 1}, 0.95);
    }

    /** Any number of points, 1 to 10 minutes away, odds of 1 to 10. */
    static Routes random(Random random, int points, double wronglyBad, double wronglyGood, double confidence) {
        return random(random, points, 1, wronglyBad, wronglyGood, confidence);
    }

    /** The same, but that one can inject at only so many of them. */
    static Routes random(Random random, int points, double injectable, double wronglyBad, double wronglyGood, double confidence) {
        List<Access> path = new ArrayList<>();
        for (int point = 0; point < points; point++) {
            path.add(new Access(1 + 9 * random.nextDouble(), random.nextDouble() < injectable, wronglyBad, wronglyGood));
        }
        double[] prior = random.doubles(points + 1, 1, 10).toArray();
        return new Routes(path, prior, confidence);
    }

    Route route() {
        return new Route(points, confidence);
    }

    Odds odds() {
        return Odds.of(prior);
    }
}
