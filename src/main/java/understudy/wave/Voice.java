package understudy.wave;

/**
 * What an output plays, a quantum at a time. {@link #render} MUST NOT allocate, lock, log or read a clock; it is
 * called once after each advance of the motion.
 */
interface Voice {

    /**
     * Fills the quantum with volts.
     *
     * @param faultsOn what the hand has switched on, a bit a fault
     */
    void render(double[] out, long faultsOn);

    /** Volts at which a line with an open contact rests. */
    double restVolts();
}
