package understudy.rig;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * A {@link Network} as linear equations, for one set of conducting clamps. The unknowns are the volts of each node, then
 * the amps of each store, from its first node to its second, then the amps out of each transformer's secondary.
 */
final class Equations {
    private final Network network;
    private final Network.Hold hold;
    private final int conducting;
    private final double[][] matrix;
    private final DecompositionSolver solver;

    Equations(Network network, Network.Hold hold, int conducting) {
        this.network = network;
        this.hold = hold;
        this.conducting = conducting;
        this.matrix = new double[size()][size()];
        stamp();
        // any pivot will do: conductances run from 1e-12 to 1e3 by nature
        this.solver = new LUDecomposition(new Array2DRowRealMatrix(matrix, false), Double.MIN_NORMAL).getSolver();
    }

    private int size() {
        return network.nodeCount() + network.stores.size() + network.transformers.size();
    }

    private void stamp() {
        for (Network.Resistor r : network.resistors) {
            conductance(r.a(), r.b(), r.siemens());
        }
        for (Network.Source s : network.sources) {
            conductance(s.node(), s.back(), s.siemens());
        }
        for (int c = 0; c < network.clamps.size(); c++) {
            if ((conducting >> c & 1) == 1) {
                conductance(network.clamps.get(c).node(), 0, network.clamps.get(c).siemens());
            }
        }
        for (int s = 0; s < network.stores.size(); s++) {
            stampStore(network.stores.get(s), network.nodeCount() + s);
        }
        for (int t = 0; t < network.transformers.size(); t++) {
            Network.Turns turns = network.transformers.get(t);
            int row = network.nodeCount() + network.stores.size() + t;
            add(row, turns.secondary(), 1);
            add(row, turns.secondaryReturn(), -1);
            add(row, turns.primary(), -turns.ratio());
            current(turns.secondary(), row, -1);
            current(turns.secondaryReturn(), row, 1);
            current(turns.primary(), row, turns.ratio());
        }
    }

    private void stampStore(Network.Store store, int row) {
        current(store.a(), row, 1);
        current(store.b(), row, -1);
        boolean sleeps = hold == Network.Hold.MID_BAND && !store.couples();
        if (store.inductor() || sleeps) {
            matrix[row][row] = 1;
            if (hold == Network.Hold.SETTLED) {
                add(row, store.a(), -Network.AGE_SECONDS / store.size());
                add(row, store.b(), Network.AGE_SECONDS / store.size());
            }
        } else {
            add(row, store.a(), 1);
            add(row, store.b(), -1);
            if (hold == Network.Hold.SETTLED) {
                matrix[row][row] = -Network.AGE_SECONDS / store.size();
            }
        }
    }

    private void conductance(int a, int b, double siemens) {
        add(a - 1, a, siemens);
        add(a - 1, b, -siemens);
        add(b - 1, b, siemens);
        add(b - 1, a, -siemens);
    }

    private void current(int node, int column, double factor) {
        if (node > 0) {
            matrix[node - 1][column] += factor;
        }
    }

    private void add(int row, int node, double value) {
        if (row >= 0 && node > 0) {
            matrix[row][node - 1] += value;
        }
    }

    /** @param withRails whether the fixed voltages act; without them the answer is what state and source do alone */
    Network.Solution solve(double[] state, double sourceVolts, double faultVolts, boolean withRails) {
        double[] right = new double[size()];
        for (Network.Source s : network.sources) {
            double amps = s.siemens() * switch (s.drive()) {
                case FIXED -> withRails ? s.fixedVolts() : 0;
                case OUTPUT -> sourceVolts;
                case FAULT -> faultVolts;
            };
            right[s.node() - 1] += amps;
            if (s.back() > 0) {
                right[s.back() - 1] -= amps;
            }
        }
        if (withRails) {
            for (int c = 0; c < network.clamps.size(); c++) {
                if ((conducting >> c & 1) == 1) {
                    Network.Clamp clamp = network.clamps.get(c);
                    right[clamp.node() - 1] += clamp.siemens() * clamp.volts();
                }
            }
        }
        for (int s = 0; s < network.stores.size(); s++) {
            boolean sleeps = hold == Network.Hold.MID_BAND && !network.stores.get(s).couples();
            right[network.nodeCount() + s] = sleeps ? 0 : state[s];
        }
        return read(solver.solve(new ArrayRealVector(right, false)).toArray(), state);
    }

    private Network.Solution read(double[] unknowns, double[] before) {
        double[] nodeVolts = new double[network.nodeCount() + 1];
        System.arraycopy(unknowns, 0, nodeVolts, 1, network.nodeCount());
        double[] state = before.clone();
        double[] rates = new double[network.stores.size()];
        for (int s = 0; s < network.stores.size(); s++) {
            Network.Store store = network.stores.get(s);
            double across = nodeVolts[store.a()] - nodeVolts[store.b()];
            double amps = unknowns[network.nodeCount() + s];
            rates[s] = (store.inductor() ? across : amps) / store.size();
            if (hold == Network.Hold.SETTLED) {
                state[s] = store.inductor() ? amps : across;
            }
        }
        return new Network.Solution(nodeVolts, state, rates, conducting);
    }
}
