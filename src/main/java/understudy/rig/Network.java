package understudy.rig;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;

/**
 * A network of resistors, rails, driven sources, capacitors, inductors, ideal transformers and clamps, solved by
 * modified nodal analysis (Ho, Ruehli and Brennan, "The modified nodal approach to network analysis", 1975). Node 0 is
 * ground. The state is the volts of each capacitor and the amps of each inductor, in the order in which they were added.
 *
 * <p>A clamp conducts exactly while its node is beyond its level, (volts - level)/ohms, so the whole is piecewise linear
 * and continuous, and has one solution.
 */
final class Network {

    /** What storage does in a solution. */
    enum Hold {
        /** Every capacitor keeps its volts and every inductor its amps: the first instant. */
        INSTANT,
        /** As {@link #INSTANT} for what couples; what shunts (leads, filters) does not yet draw current. */
        MID_BAND,
        /** All has come to rest, from the state given: charge that can't flow away stays. */
        SETTLED
    }

    /** Long against every time constant of a rig, short enough that rounding stays below 1e-6 of the volts. */
    private static final double AGE_SECONDS = 1e7;

    /** A clamp this near its level fits either way: far below all that matters, far above rounding. */
    static final double MISFIT_VOLTS = 1e-9;

    private record Resistor(int a, int b, double siemens) {}

    private record Rail(int node, double siemens, double volts) {}

    private record Source(int node, int back, double siemens, boolean fault) {}

    private record Store(int a, int b, double size, boolean inductor, boolean couples) {}

    private record Turns(int primary, int secondary, int secondaryReturn, double ratio) {}

    private record Clamp(int node, double volts, boolean upper, double siemens) {}

    private final List<Resistor> resistors = new ArrayList<>();
    private final List<Rail> rails = new ArrayList<>();
    private final List<Source> sources = new ArrayList<>();
    private final List<Store> stores = new ArrayList<>();
    private final List<Turns> transformers = new ArrayList<>();
    private final List<Clamp> clamps = new ArrayList<>();
    private final Map<Integer, Equations> known = new HashMap<>();
    private int nodes;

    int node() {
        return ++nodes;
    }

    void resistor(int a, int b, double ohms) {
        resistors.add(new Resistor(a, b, 1 / ohms));
    }

    /** A fixed voltage behind a resistance. */
    void rail(int node, double ohms, double volts) {
        rails.add(new Rail(node, 1 / ohms, volts));
    }

    /** The audio output's voltage behind a resistance. */
    void source(int node, double ohms) {
        sources.add(new Source(node, 0, 1 / ohms, false));
    }

    /** A voltage from {@code back} to {@code node} that the circuit is not made for. */
    void fault(int node, int back, double ohms) {
        sources.add(new Source(node, back, 1 / ohms, true));
    }

    void capacitor(int a, int b, double farads, boolean couples) {
        stores.add(new Store(a, b, farads, false, couples));
    }

    void inductor(int a, int b, double henries) {
        stores.add(new Store(a, b, henries, true, true));
    }

    /** Ideal, its primary to ground. */
    void transformer(int primary, int secondary, int secondaryReturn, double ratio) {
        transformers.add(new Turns(primary, secondary, secondaryReturn, ratio));
    }

    void clamp(int node, double volts, boolean upper, double ohms) {
        clamps.add(new Clamp(node, volts, upper, 1 / ohms));
    }

    int stateSize() {
        return stores.size();
    }

    /** Whether anything shunts; if not, {@link Hold#MID_BAND} is {@link Hold#INSTANT}. */
    boolean hasShuntingStores() {
        return stores.stream().anyMatch(store -> !store.couples);
    }

    int nodeCount() {
        return nodes;
    }

    int clampCount() {
        return clamps.size();
    }

    /**
     * Volts, amps and what conducts.
     *
     * @param nodeVolts by node, ground included
     * @param state     the state given, or the one at rest
     * @param rates     what the state's volts and amps change by in a second
     * @param conducting bit by bit, clamp by clamp
     */
    record Solution(double[] nodeVolts, double[] state, double[] rates, int conducting) {}

    /** Solves for the clamps that conduct as well. */
    Solution solve(Hold hold, double[] state, double sourceVolts, double faultVolts) {
        int conducting = 0;
        for (int round = 0; round < 4 * clamps.size() + 1; round++) {
            Solution solution = equations(hold, conducting).solve(state, sourceVolts, faultVolts, true);
            int misfits = misfits(conducting, solution.nodeVolts);
            if (misfits == 0) {
                return solution;
            }
            conducting ^= misfits;
        }
        for (int every = 0; every < 1 << clamps.size(); every++) { // rounds that go in circles: try all
            Solution solution = equations(hold, every).solve(state, sourceVolts, faultVolts, true);
            if (misfits(every, solution.nodeVolts) == 0) {
                return solution;
            }
        }
        throw new IllegalStateException("no set of clamps fits");
    }

    /** Kept, since one network is solved for many states and voltages. */
    Equations equations(Hold hold, int conducting) {
        return known.computeIfAbsent(hold.ordinal() << 16 | conducting, key -> new Equations(hold, conducting));
    }

    /** The clamps, bit by bit, that are taken for conducting and should rest, or the other way round. */
    int misfits(int conducting, double[] nodeVolts) {
        int misfits = 0;
        for (int c = 0; c < clamps.size(); c++) {
            if (misfitVolts(c, conducting, nodeVolts) > MISFIT_VOLTS) {
                misfits |= 1 << c;
            }
        }
        return misfits;
    }

    /** By how much clamp {@code clamp} does not fit what it is taken for; negative when it fits. */
    double misfitVolts(int clamp, int conducting, double[] nodeVolts) {
        Clamp c = clamps.get(clamp);
        double beyond = (nodeVolts[c.node] - c.volts) * (c.upper ? 1 : -1);
        return (conducting >> clamp & 1) == 1 ? -beyond : beyond;
    }

    /** The network as linear equations, for one set of conducting clamps. */
    final class Equations {
        private final Hold hold;
        private final int conducting;
        private final double[][] matrix;
        private final DecompositionSolver solver;

        private Equations(Hold hold, int conducting) {
            this.hold = hold;
            this.conducting = conducting;
            this.matrix = new double[size()][size()];
            stamp();
            // any pivot will do: conductances run from 1e-12 to 1e3 by nature
            this.solver = new LUDecomposition(new Array2DRowRealMatrix(matrix, false), Double.MIN_NORMAL).getSolver();
        }

        private int size() {
            return nodes + stores.size() + transformers.size();
        }

        private void stamp() {
            for (Resistor r : resistors) {
                conductance(r.a, r.b, r.siemens);
            }
            for (Rail r : rails) {
                conductance(r.node, 0, r.siemens);
            }
            for (Source s : sources) {
                conductance(s.node, s.back, s.siemens);
            }
            for (int c = 0; c < clamps.size(); c++) {
                if ((conducting >> c & 1) == 1) {
                    conductance(clamps.get(c).node, 0, clamps.get(c).siemens);
                }
            }
            for (int s = 0; s < stores.size(); s++) {
                stampStore(stores.get(s), nodes + s);
            }
            for (int t = 0; t < transformers.size(); t++) {
                Turns turns = transformers.get(t);
                int row = nodes + stores.size() + t; // its unknown is the amps out of the secondary
                add(row, turns.secondary, 1);
                add(row, turns.secondaryReturn, -1);
                add(row, turns.primary, -turns.ratio);
                current(turns.secondary, row, -1);
                current(turns.secondaryReturn, row, 1);
                current(turns.primary, row, turns.ratio);
            }
        }

        /** Its unknown is the amps from a to b through it, whichever kind it is. */
        private void stampStore(Store store, int row) {
            current(store.a, row, 1);
            current(store.b, row, -1);
            boolean sleeps = hold == Hold.MID_BAND && !store.couples;
            if (store.inductor || sleeps) {
                matrix[row][row] = 1;
                if (hold == Hold.SETTLED) {
                    add(row, store.a, -AGE_SECONDS / store.size);
                    add(row, store.b, AGE_SECONDS / store.size);
                }
            } else {
                add(row, store.a, 1);
                add(row, store.b, -1);
                if (hold == Hold.SETTLED) {
                    matrix[row][row] = -AGE_SECONDS / store.size;
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
        Solution solve(double[] state, double sourceVolts, double faultVolts, boolean withRails) {
            double[] right = new double[size()];
            for (Source s : sources) {
                double amps = s.siemens * (s.fault ? faultVolts : sourceVolts);
                right[s.node - 1] += amps;
                if (s.back > 0) {
                    right[s.back - 1] -= amps;
                }
            }
            if (withRails) {
                for (Rail r : rails) {
                    right[r.node - 1] += r.siemens * r.volts;
                }
                for (int c = 0; c < clamps.size(); c++) {
                    if ((conducting >> c & 1) == 1) {
                        Clamp clamp = clamps.get(c);
                        right[clamp.node - 1] += clamp.siemens * clamp.volts;
                    }
                }
            }
            for (int s = 0; s < stores.size(); s++) {
                boolean sleeps = hold == Hold.MID_BAND && !stores.get(s).couples;
                right[nodes + s] = sleeps ? 0 : state[s];
            }
            return read(solver.solve(new ArrayRealVector(right, false)).toArray(), state);
        }

        private Solution read(double[] unknowns, double[] before) {
            double[] nodeVolts = new double[nodes + 1];
            System.arraycopy(unknowns, 0, nodeVolts, 1, nodes);
            double[] state = before.clone();
            double[] rates = new double[stores.size()];
            for (int s = 0; s < stores.size(); s++) {
                Store store = stores.get(s);
                double across = nodeVolts[store.a] - nodeVolts[store.b];
                double amps = unknowns[nodes + s];
                rates[s] = (store.inductor ? across : amps) / store.size;
                if (hold == Hold.SETTLED) {
                    state[s] = store.inductor ? amps : across;
                }
            }
            return new Solution(nodeVolts, state, rates, conducting);
        }
    }
}
