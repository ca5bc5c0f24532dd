package understudy.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LeastSquaresTest {

    /** Unknowns 2 and -3 of a matrix with rows (4, 1) and (1, 3): right-hand sides 5 and -7. */
    @Test
    void theUpperTriangleIsEnough() {
        double[] solution = LeastSquares.solve(new double[][] {{4, 1, 5}, {-99, 3, -7}});
        // condition below 2: a few units in the last place of 3, each 4.4e-16
        assertThat(solution).containsExactly(new double[] {2, -3}, within(4e-15));
    }

    /** Seconds and volts side by side: pivots of 1e-24 and 1e12 are both taken for what they are. */
    @Test
    void unknownsMayDifferInSizeByAnything() {
        double[] solution = LeastSquares.solve(new double[][] {{1e-24, 0, 2e-24}, {0, 1e12, 3e12}});
        // one root, two divisions: below 1e-15 of the value
        assertThat(solution).containsExactly(new double[] {2, 3}, within(4e-15));
    }

    @Test
    void whatTheSamplesDoNotDetermineIsNoNumber() {
        assertThat(LeastSquares.solve(new double[2][3])).containsOnly(Double.NaN);
    }
}
