package understudy.measure;

/** Small normal equations, solved. */
final class LeastSquares {
    private LeastSquares() {}

    /**
     * Solves a symmetric positive definite system by Gauss elimination, which needs no pivots there.
     *
     * @param normal n rows of n + 1: the upper triangle of the matrix, then the right-hand side; spoiled on return
     */
    static double[] solve(double[][] normal) {
        int n = normal.length;
        for (int r = 0; r < n; r++) {
            for (int c = 0; c < r; c++) {
                normal[r][c] = normal[c][r];
            }
        }
        for (int p = 0; p < n; p++) {
            for (int r = p + 1; r < n; r++) {
                double factor = normal[r][p] / normal[p][p];
                for (int c = p; c <= n; c++) {
                    normal[r][c] -= factor * normal[p][c];
                }
            }
        }
        double[] solution = new double[n];
        for (int r = n - 1; r >= 0; r--) {
            double sum = normal[r][n];
            for (int c = r + 1; c < n; c++) {
                sum -= normal[r][c] * solution[c];
            }
            solution[r] = sum / normal[r][r];
        }
        return solution;
    }
}
