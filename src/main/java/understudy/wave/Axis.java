package understudy.wave;

import understudy.motion.Motion;

/**
 * The cycles of one output along the shared angle. A position is told in cycles above {@link #base()}, a whole number
 * that keeps step with the motion's base turn, so that it stays small however long it plays.
 */
final class Axis {
    private final double cyclesPerTurn;
    private final double startCycle;
    private long base;
    private double atBaseTurn;

    /**
     * @param cyclesPerTurn cycles of the output for one turn of the speed, 0 or more
     * @param lateTurns     turns of the speed by which the output comes later
     */
    Axis(double cyclesPerTurn, double lateTurns) {
        this.cyclesPerTurn = cyclesPerTurn;
        this.startCycle = -cyclesPerTurn * lateTurns;
    }

    /** Where frame 0 stands, in absolute cycles. */
    double startCycle() {
        return startCycle;
    }

    double cyclesPerTurn() {
        return cyclesPerTurn;
    }

    long base() {
        return base;
    }

    /** Follows the motion into its next quantum; returns by how much {@link #base()} has grown. */
    long follow(Motion motion) {
        double turn = motion.baseTurn();
        double product = cyclesPerTurn * turn;
        double whole = Math.floor(product);
        double fraction = (product - whole) + Math.fma(cyclesPerTurn, turn, -product) + startCycle;
        double carry = Math.floor(fraction);
        long before = base;
        base = (long) whole + (long) carry;
        atBaseTurn = fraction - carry;
        return base - before;
    }

    /** Cycles above {@link #base()} at an angle of the motion. */
    double cyclesAt(double turnsAboveBase) {
        return atBaseTurn + cyclesPerTurn * turnsAboveBase;
    }

    /** The angle of the motion at a position; only while {@link #cyclesPerTurn()} is above 0. */
    double turnsAt(double cyclesAboveBase) {
        return (cyclesAboveBase - atBaseTurn) / cyclesPerTurn;
    }

    /** A position in absolute cycles, told above {@link #base()}. */
    double aboveBase(long cycle, double fraction) {
        return (cycle - base) + fraction;
    }
}
