package understudy.measure;

/**
 * The window of every spectrum here: seven cosine terms, side lobes below -180 dB, main lobe 7 bins to either side.
 *
 * <p>Class of windows: F. J. Harris, "On the Use of Windows for Harmonic Analysis with the Discrete Fourier Transform",
 * Proc. IEEE 66 (1978). Coefficients: H.-H. Albrecht, "A Family of Cosine-Sum Windows for High-Resolution
 * Measurements", Proc. ICASSP (2001), 7-term minimum side lobe.
 */
final class CosineWindow {
    /** Bins to either side of a tone that hold all of it but 1e-18 of its power, off-bin tones included. */
    static final int LOBE_BINS = 8;

    private static final double[] TERMS = {
        0.27105140069342, -0.43329793923448, 0.21812299954311, -0.06592544638803, 0.01081174209837,
        -0.00077658482522, 0.00001388721735
    };

    private CosineWindow() {}

    /** Multiplies the first {@code length} samples by the window, into a new array. */
    static double[] applied(double[] samples, int length) {
        double[] windowed = new double[length];
        for (int i = 0; i < length; i++) {
            windowed[i] = samples[i] * at(i, length);
        }
        return windowed;
    }

    /** Sum of the window's squares: each cosine gives half the length times its square. */
    static double energy(int length) {
        double sum = 2 * TERMS[0] * TERMS[0];
        for (int k = 1; k < TERMS.length; k++) {
            sum += TERMS[k] * TERMS[k];
        }
        return sum * length / 2;
    }

    private static double at(int i, int length) {
        // all multiples from one cosine, by Chebyshev's recurrence
        double twice = 2 * Math.cos(2 * Math.PI * i / length);
        double before = 1;
        double cosine = twice / 2;
        double sum = TERMS[0];
        for (int k = 1; k < TERMS.length; k++) {
            sum += TERMS[k] * cosine;
            double next = twice * cosine - before;
            before = cosine;
            cosine = next;
        }
        return sum;
    }
}
