package understudy.measure;

/**
 * The least-squares fit of gain, corner and latency to what a chain makes of a known signal.
 *
 * <p>Model: H(f) = gain (jf/corner) / (1 + jf/corner) exp(-j 2 pi f latency), one AC coupling. All spectral lines of a
 * band count, weighted as they were sent, which in white noise is the maximum-likelihood fit; harmonics, elsewhere in
 * time at every frequency, average out. Gauss-Newton; a negative gain is an inverted chain.
 *
 * @param gain           output over input, negative if inverted
 * @param cornerHz       of the AC coupling
 * @param latencySeconds delay
 * @param residual       rms of what the model leaves, relative to what it explains
 */
record ChainFit(double gain, double cornerHz, double latencySeconds, double residual) {

    private static final int MOST_STEPS = 60;
    private static final double SETTLED = 1e-10;
    private static final double LEAST_CORNER_HZ = 0.01;
    private static final double MOST_CORNER_HZ = 2000;
    private static final double START_CORNER_HZ = 10;

    /**
     * @param sent     spectrum packed as by {@link Fourier}
     * @param received likewise, of the same length
     * @param binHz    distance of lines
     */
    static ChainFit of(double[] sent, double[] received, double binHz, double fromHz, double toHz, double latencySeconds) {
        double corner = START_CORNER_HZ;
        double latency = latencySeconds;
        double gain = gainAt(sent, received, binHz, fromHz, toHz, corner, latency);
        double caution = 1e-3;
        for (int step = 0; step < MOST_STEPS; step++) {
            Sums sums = new Sums(sent, received, binHz, fromHz, toHz, gain, corner, latency);
            double[] move = LeastSquares.solve(sums.cautious(caution));
            double nextCorner = Math.max(LEAST_CORNER_HZ, Math.min(MOST_CORNER_HZ, corner * Math.exp(move[1])));
            double nextGain = gain * (1 + move[0]);
            double nextLatency = latency + move[2];
            double nextError = new Sums(sent, received, binHz, fromHz, toHz, nextGain, nextCorner, nextLatency).error;
            if (nextError > sums.error) {
                caution *= 10; // Levenberg and Marquardt: shorter steps until they help
                if (caution > 1e12) {
                    break;
                }
                continue;
            }
            boolean settled = sums.error - nextError <= SETTLED * nextError;
            gain = nextGain;
            corner = nextCorner;
            latency = nextLatency;
            caution /= 10;
            if (settled) {
                break;
            }
        }
        Sums last = new Sums(sent, received, binHz, fromHz, toHz, gain, corner, latency);
        return new ChainFit(gain, corner, latency, Math.sqrt(last.error / last.explained));
    }

    /** The best real gain, sign and all, when corner and latency are given. */
    private static double gainAt(double[] sent, double[] received, double binHz, double fromHz, double toHz,
            double corner, double latency) {
        Sums sums = new Sums(sent, received, binHz, fromHz, toHz, 1, corner, latency);
        return 1 + sums.normal[0][3] / sums.normal[0][0];
    }

    /** Normal equations in (relative gain, log corner, latency), and the squared error where they are taken. */
    static final class Sums {
        final double[][] normal = new double[3][4];
        double error;
        double explained;

        Sums(double[] sent, double[] received, double binHz, double fromHz, double toHz,
                double gain, double corner, double latency) {
            int last = Math.min(sent.length / 2 - 1, (int) Math.floor(toHz / binHz));
            double[] re = new double[3];
            double[] im = new double[3];
            for (int k = Math.max(1, (int) Math.ceil(fromHz / binHz)); k <= last; k++) {
                double hz = k * binHz;
                double turn = -2 * Math.PI * hz * latency;
                double cosine = Math.cos(turn);
                double sine = Math.sin(turn);
                double x = hz / corner;
                double scale = gain / (1 + x * x);
                // jx / (1 + jx) = (x^2 + jx) / (1 + x^2)
                double hRe = scale * (x * x * cosine - x * sine);
                double hIm = scale * (x * x * sine + x * cosine);
                re[0] = sent[2 * k] * hRe - sent[2 * k + 1] * hIm;
                im[0] = sent[2 * k] * hIm + sent[2 * k + 1] * hRe;
                double missRe = received[2 * k] - re[0];
                double missIm = received[2 * k + 1] - im[0];
                // d/d ln corner: times -1 / (1 + jx) = (-1 + jx) / (1 + x^2)
                re[1] = (-re[0] - x * im[0]) / (1 + x * x);
                im[1] = (-im[0] + x * re[0]) / (1 + x * x);
                re[2] = 2 * Math.PI * hz * im[0];
                im[2] = -2 * Math.PI * hz * re[0];
                for (int r = 0; r < 3; r++) {
                    for (int c = r; c < 3; c++) {
                        normal[r][c] += re[r] * re[c] + im[r] * im[c];
                    }
                    normal[r][3] += re[r] * missRe + im[r] * missIm;
                }
                error += missRe * missRe + missIm * missIm;
                explained += re[0] * re[0] + im[0] * im[0];
            }
        }

        double[][] cautious(double caution) {
            double[][] raised = new double[3][];
            for (int r = 0; r < 3; r++) {
                raised[r] = normal[r].clone();
                raised[r][r] *= 1 + caution;
            }
            return raised;
        }
    }
}
