package understudy.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.optim.MaxIter;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.junit.jupiter.api.Test;

/** The geometry beside a solver of linear programs, which knows nothing of polygons and hulls. */
class LinesTest {

    /** The solver stops within 1e-6 of the optimum, in numbers of the size of 1 to 100 here. */
    private static final double SOLVER = 1e-5;

    private static double best(List<Pair> pairs, double distance, double[] objective, GoalType goal) {
        List<LinearConstraint> constraints = new ArrayList<>();
        for (Pair pair : pairs) {
            double[] line = {1, pair.frequencyHz()};
            constraints.add(new LinearConstraint(line, Relationship.LEQ, pair.shown() + distance));
            constraints.add(new LinearConstraint(line, Relationship.GEQ, pair.shown() - distance));
        }
        return new SimplexSolver().optimize(new MaxIter(1000), new LinearObjectiveFunction(objective, 0),
                new LinearConstraintSet(constraints), goal, new NonNegativeConstraint(false)).getValue();
    }

    /** The least distance t for which a line passes all pairs within t. */
    private static double leastDistance(List<Pair> pairs) {
        List<LinearConstraint> constraints = new ArrayList<>();
        for (Pair pair : pairs) {
            constraints.add(new LinearConstraint(new double[] {1, pair.frequencyHz(), -1}, Relationship.LEQ, pair.shown()));
            constraints.add(new LinearConstraint(new double[] {1, pair.frequencyHz(), 1}, Relationship.GEQ, pair.shown()));
        }
        return new SimplexSolver().optimize(new MaxIter(1000), new LinearObjectiveFunction(new double[] {0, 0, 1}, 0),
                new LinearConstraintSet(constraints), GoalType.MINIMIZE, new NonNegativeConstraint(false)).getValue();
    }

    private static List<Pair> random(Random chance, boolean roundedLine) {
        List<Pair> pairs = new ArrayList<>();
        int count = 3 + chance.nextInt(6);
        double perHz = 2 + chance.nextDouble();
        double offset = 4 * chance.nextDouble() - 2;
        for (int i = 0; i < count; i++) {
            double hz = 1 + 29 * chance.nextDouble();
            double shown = offset + perHz * hz;
            pairs.add(new Pair(hz, roundedLine ? Math.rint(shown) : shown + 5 * chance.nextGaussian()));
        }
        return pairs;
    }

    @Test
    void theExtremesAreThoseOfLinearProgramming() {
        Random chance = new Random(20);
        for (int trial = 0; trial < 300; trial++) {
            List<Pair> pairs = random(chance, true);
            Lines lines = Lines.within(0.5, pairs).orElseThrow();
            Estimate slope = lines.slope();
            Estimate offset = lines.at(0);
            assertThat(slope.low()).isCloseTo(best(pairs, 0.5, new double[] {0, 1}, GoalType.MINIMIZE), within(SOLVER));
            assertThat(slope.high()).isCloseTo(best(pairs, 0.5, new double[] {0, 1}, GoalType.MAXIMIZE), within(SOLVER));
            assertThat(offset.low()).isCloseTo(best(pairs, 0.5, new double[] {1, 0}, GoalType.MINIMIZE), within(SOLVER));
            assertThat(offset.high()).isCloseTo(best(pairs, 0.5, new double[] {1, 0}, GoalType.MAXIMIZE), within(SOLVER));
        }
    }

    @Test
    void theNarrowestStripIsThatOfLinearProgramming() {
        Random chance = new Random(21);
        for (int trial = 0; trial < 300; trial++) {
            List<Pair> pairs = random(chance, false);
            double least = Strip.halfHeight(pairs);
            assertThat(least).isCloseTo(leastDistance(pairs), within(SOLVER));
            assertThat(Lines.within(least + SOLVER, pairs)).isPresent();
            assertThat(Lines.within(least - SOLVER, pairs)).isEmpty();
        }
    }

    /** Two pairs: the slope is a difference of two even spreads, so it lies symmetrically, and so does its middle. */
    @Test
    void twoPairsByHand() {
        Lines lines = Lines.within(0.5, List.of(new Pair(100, 16), new Pair(300, 48))).orElseThrow();
        // allowed is a hair more than half a step, 1e-9 of it
        assertThat(lines.slope().low()).isCloseTo(31 / 200.0, within(1e-9));
        assertThat(lines.slope().value()).isCloseTo(32 / 200.0, within(1e-9));
        assertThat(lines.slope().high()).isCloseTo(33 / 200.0, within(1e-9));
        // at 0 Hz: 16 - 16 +/- (1.5 x 0.5 + 0.5 x 0.5)
        assertThat(lines.at(0).low()).isCloseTo(-1, within(1e-7));
        assertThat(lines.at(0).high()).isCloseTo(1, within(1e-7));
    }

    /** The centre is the mean of all lines that will do: here by throwing darts at the box around them. */
    @Test
    void theLikeliestLineIsTheMeanOfAll() {
        List<Pair> pairs = List.of(new Pair(5, 11), new Pair(12, 25), new Pair(20, 42), new Pair(24, 50));
        Lines lines = Lines.within(0.5, pairs).orElseThrow();
        Random chance = new Random(22);
        double sum = 0;
        double squares = 0;
        int hits = 0;
        for (int i = 0; i < 400_000; i++) {
            double offset = lines.at(0).low() + chance.nextDouble() * (lines.at(0).high() - lines.at(0).low());
            double perHz = lines.slope().low() + chance.nextDouble() * (lines.slope().high() - lines.slope().low());
            if (pairs.stream().allMatch(pair -> Math.abs(offset + perHz * pair.frequencyHz() - pair.shown()) <= 0.5)) {
                hits++;
                sum += perHz;
                squares += perHz * perHz;
            }
        }
        double mean = sum / hits;
        double deviation = Math.sqrt(squares / hits - mean * mean);
        // four standard errors of the mean
        assertThat(lines.slope().value()).isCloseTo(mean, within(4 * deviation / Math.sqrt(hits)));
    }

    @Test
    void noLineWhereNoneFits() {
        assertThat(Lines.within(0.5, List.of(new Pair(1, 0), new Pair(2, 9), new Pair(3, 0)))).isEqualTo(Optional.empty());
    }
}
