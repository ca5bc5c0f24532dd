package understudy.rig;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

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
    static final double AGE_SECONDS = 1e7;

    /** A clamp this near its level fits either way: far below all that matters, far above rounding. */
    static final double MISFIT_VOLTS = 1e-9;

    record Resistor(int a, int b, double siemens) {}

    enum Drive { FIXED, OUTPUT, FAULT }

    record Source(int node, int back, double siemens, Drive drive, double fixedVolts) {}

    record Store(int a, int b, double size, boolean inductor, boolean couples) {}

    record Turns(int primary, int secondary, int secondaryReturn, double ratio) {}

    record Clamp(int node, double volts, boolean upper, double siemens) {}

    final List<Resistor> resistors = new ArrayList<>();
    final List<Source> sources = new ArrayList<>();
    final List<Store> stores = new ArrayList<>();
    final List<Turns> transformers = new ArrayList<>();
    final List<Clamp> clamps = new ArrayList<>();
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
        sources.add(new Source(node, 0, 1 / ohms, Drive.FIXED, volts));
    }

    /** The audio output's voltage behind a resistance. */
    void source(int node, double ohms) {
        sources.add(new Source(node, 0, 1 / ohms, Drive.OUTPUT, 0));
    }

    /** A voltage from {@code back} to {@code node} that the circuit is not made for. */
    void fault(int node, int back, double ohms) {
        sources.add(new Source(node, back, 1 / ohms, Drive.FAULT, 0));
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
        return known.computeIfAbsent(hold.ordinal() << 16 | conducting, key -> new Equations(this, hold, conducting));
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
}
