package understudy.measure;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;

/** Small normal equations, solved. */
final class LeastSquares {
    private LeastSquares() {}

    /**
     * Solves a symmetric positive definite system; not-a-number throughout where the samples don't determine the unknowns,
     * so that silence gives no fit instead of a failure.
     *
     * @param normal n rows of n + 1: the upper triangle of the matrix, then the right-hand side
     */
    static double[] solve(double[][] normal) {
        int n = normal.length;
        double[][] matrix = new double[n][n];
        double[] right = new double[n];
        for (int r = 0; r < n; r++) {
            for (int c = r; c < n; c++) {
                matrix[r][c] = normal[r][c];
                matrix[c][r] = normal[r][c];
            }
            right[r] = normal[r][n];
        }
        try {
            // any positive pivot will do: the unknowns have units of their own, so a pivot has no natural size
            return new CholeskyDecomposition(new Array2DRowRealMatrix(matrix, false),
                    CholeskyDecomposition.DEFAULT_RELATIVE_SYMMETRY_THRESHOLD, 0)
                    .getSolver().solve(new ArrayRealVector(right, false)).toArray();
        } catch (NonPositiveDefiniteMatrixException undetermined) {
            double[] none = new double[n];
            Arrays.fill(none, Double.NaN);
            return none;
        }
    }
}
