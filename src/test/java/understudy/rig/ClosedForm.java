package understudy.rig;

/**
 * A single-ended rig behind a blocking capacitor on an input that is one resistance to one voltage: every level and
 * current written out by hand (voltage dividers and Millman's theorem), sharing nothing with the network solver.
 */
record ClosedForm(
        double fullScaleVolts, double outputOhms, double seriesOhms, double shuntOhms, double wireOhms, // both wires
        double inputOhms, double inputVolts) {

    private static final double SHORT_OHMS = 0.01;

    double sourceOhms() {
        return outputOhms + seriesOhms;
    }

    /** At the shunt, given the volts beyond the wires, the resistance to there, and the capacitor's volts. */
    private double shuntVolts(double farVolts, double farOhms, double capacitorVolts, double playedVolts) {
        return (farVolts / farOhms + (capacitorVolts + playedVolts) / sourceOhms())
                / (1 / farOhms + 1 / shuntOhms + 1 / sourceOhms());
    }

    double restShuntVolts() {
        return inputVolts * shuntOhms / (shuntOhms + wireOhms + inputOhms);
    }

    double restPinVolts() {
        return inputVolts * (shuntOhms + wireOhms) / (shuntOhms + wireOhms + inputOhms);
    }

    /** Volts at the pin for a volt of the source, capacitor as a short. */
    double gain() {
        double load = 1 / (1 / shuntOhms + 1 / (wireOhms + inputOhms));
        return load / (load + sourceOhms()) * inputOhms / (inputOhms + wireOhms);
    }

    double rigAmps() {
        return fullScaleVolts * gain() / inputOhms;
    }

    /** The most through the clip in any fault state. */
    double faultAmps(double popVolts) {
        double far = wireOhms + inputOhms;
        double most = 0;
        // end to end: the capacitor has charged to one end of full scale on top of its resting volts
        most = Math.max(most, clip(inputVolts, far, restShuntVolts() + fullScaleVolts, fullScaleVolts));
        most = Math.max(most, clip(inputVolts, far, restShuntVolts() - fullScaleVolts, -fullScaleVolts));
        for (int sign = -1; sign <= 1; sign += 2) {
            most = Math.max(most, clip(inputVolts, far, 0, sign * fullScaleVolts));
            most = Math.max(most, clip(inputVolts, far, 0, sign * popVolts));
            most = Math.max(most, clip(inputVolts, far, restShuntVolts(), sign * popVolts));
            for (double shortVolts : new double[] {0, 5, 16, 24}) {
                double near = wireOhms + SHORT_OHMS;
                double settled = shortVolts * shuntOhms / (shuntOhms + near);
                // the input's own current does not pass the clip: the short holds the pin, near enough
                for (double capacitorVolts : new double[] {0, restShuntVolts(), settled}) {
                    most = Math.max(most, clip(shortVolts, near, capacitorVolts, sign * fullScaleVolts));
                }
            }
        }
        return most;
    }

    private double clip(double farVolts, double farOhms, double capacitorVolts, double playedVolts) {
        return Math.abs(farVolts - shuntVolts(farVolts, farOhms, capacitorVolts, playedVolts)) / farOhms;
    }
}
