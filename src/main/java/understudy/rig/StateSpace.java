package understudy.rig;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * A network, for one set of conducting clamps, as dx/dt = A x + b e + k and node volts = C x + d e + m, where x is its
 * state, e the source's volts, and k and m come from its rails. Columns are found by solving the network for one unit at
 * a time.
 */
final class StateSpace {
    final int size;
    final double[][] a;
    final double[] b;
    final double[] k;
    private final double[][] fromState;
    private final double[] fromSource;
    private final double[] fromRails;

    StateSpace(Network network, int conducting) {
        Equations equations = network.equations(Network.Hold.INSTANT, conducting);
        size = network.stateSize();
        a = new double[size][size];
        fromState = new double[network.nodeCount() + 1][size];
        double[] none = new double[size];
        Network.Solution source = equations.solve(none, 1, 0, false);
        Network.Solution rails = equations.solve(none, 0, 0, true);
        b = source.rates();
        fromSource = source.nodeVolts();
        k = rails.rates();
        fromRails = rails.nodeVolts();
        for (int s = 0; s < size; s++) {
            double[] unit = new double[size];
            unit[s] = 1;
            Network.Solution solution = equations.solve(unit, 0, 0, false);
            for (int row = 0; row < size; row++) {
                a[row][s] = solution.rates()[row];
            }
            for (int node = 0; node < fromState.length; node++) {
                fromState[node][s] = solution.nodeVolts()[node];
            }
        }
    }

    /** Volts of all nodes, into {@code nodeVolts}. */
    void read(double[] state, double sourceVolts, double[] nodeVolts) {
        for (int node = 0; node < fromState.length; node++) {
            double volts = fromSource[node] * sourceVolts + fromRails[node];
            double[] row = fromState[node];
            for (int s = 0; s < size; s++) {
                volts += row[s] * state[s];
            }
            nodeVolts[node] = volts;
        }
    }

    /** Node volts, real and imaginary, for a source of 1 V at {@code hz}; rails give nothing at a frequency. */
    double[][] response(double hz) {
        double w = 2 * Math.PI * hz;
        double[][] matrix = new double[2 * size][2 * size];
        double[] right = new double[2 * size];
        for (int row = 0; row < size; row++) {
            for (int column = 0; column < size; column++) {
                matrix[row][column] = -a[row][column];
                matrix[size + row][size + column] = -a[row][column];
            }
            matrix[row][size + row] = -w;
            matrix[size + row][row] = w;
            right[row] = b[row];
        }
        double[] x = size == 0 ? right : new LUDecomposition(new Array2DRowRealMatrix(matrix, false), Double.MIN_NORMAL)
                .getSolver().solve(new ArrayRealVector(right, false)).toArray();
        double[][] volts = new double[2][fromState.length];
        for (int node = 0; node < fromState.length; node++) {
            volts[0][node] = fromSource[node];
            for (int s = 0; s < size; s++) {
                volts[0][node] += fromState[node][s] * x[s];
                volts[1][node] += fromState[node][s] * x[size + s];
            }
        }
        return volts;
    }
}
