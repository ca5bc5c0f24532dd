package understudy.rig;

/**
 * What becomes of a state over one step of time while the source's volts run straight from one value to another: exact,
 * by the exponential of the system's matrix with the source and its slope as further states (Van Loan, "Computing
 * integrals involving the matrix exponential", 1978).
 */
final class TimeStep {
    private static final int TERMS = 14; // of a norm of at most 1/2: the next is below 2e-17

    private final int size;
    private final double[][] power;

    TimeStep(StateSpace space, double seconds) {
        size = space.size;
        double[][] matrix = new double[size + 3][size + 3];
        for (int row = 0; row < size; row++) {
            for (int column = 0; column < size; column++) {
                matrix[row][column] = space.a[row][column] * seconds;
            }
            matrix[row][size] = space.b[row] * seconds;
            matrix[row][size + 1] = space.k[row] * seconds;
        }
        matrix[size][size + 2] = 1;
        power = exponential(matrix);
    }

    /** Moves {@code state} on, into {@code next}. */
    void advance(double[] state, double fromVolts, double toVolts, double[] next) {
        for (int row = 0; row < size; row++) {
            double[] p = power[row];
            double sum = p[size] * fromVolts + p[size + 1] + p[size + 2] * (toVolts - fromVolts);
            for (int column = 0; column < size; column++) {
                sum += p[column] * state[column];
            }
            next[row] = sum;
        }
    }

    /** By scaling, its series, and squaring. */
    static double[][] exponential(double[][] matrix) {
        int n = matrix.length;
        double norm = 0;
        for (double[] row : matrix) {
            double sum = 0;
            for (double value : row) {
                sum += Math.abs(value);
            }
            norm = Math.max(norm, sum);
        }
        int squarings = norm > 0.5 ? Math.getExponent(norm) + 2 : 0;
        double[][] scaled = new double[n][n];
        for (int r = 0; r < n; r++) {
            for (int c = 0; c < n; c++) {
                scaled[r][c] = Math.scalb(matrix[r][c], -squarings);
            }
        }
        double[][] sum = unit(n);
        for (int term = TERMS; term >= 1; term--) { // 1 + x(1 + x/2(1 + x/3(...)))
            sum = times(scaled, sum, 1.0 / term);
            for (int r = 0; r < n; r++) {
                sum[r][r] += 1;
            }
        }
        for (int s = 0; s < squarings; s++) {
            sum = times(sum, sum, 1);
        }
        return sum;
    }

    private static double[][] unit(int n) {
        double[][] unit = new double[n][n];
        for (int r = 0; r < n; r++) {
            unit[r][r] = 1;
        }
        return unit;
    }

    private static double[][] times(double[][] left, double[][] right, double factor) {
        int n = left.length;
        double[][] product = new double[n][n];
        for (int r = 0; r < n; r++) {
            for (int i = 0; i < n; i++) {
                double value = left[r][i] * factor;
                for (int c = 0; value != 0 && c < n; c++) {
                    product[r][c] += value * right[i][c];
                }
            }
        }
        return product;
    }
}
