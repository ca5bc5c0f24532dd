package understudy.measure;

import understudy.refusal.Refused;

/**
 * The sine that fits a recording best, by least squares: {@code offset + amplitude cos(2 pi f t + phase)}, t = 0 at the
 * first sample. Source: IEEE Std 1057-2017, sine-wave curve fit with three parameters (frequency known) and with four
 * (Gauss-Newton from an interpolated FFT).
 *
 * <p>In white noise the fit reaches the Cramer-Rao bound (D. C. Rife, R. R. Boorstyn, "Single-Tone Parameter
 * Estimation from Discrete-Time Observations", IEEE Trans. Inf. Theory 20, 1974, for a real tone): for N samples of
 * noise s, s(f) = rate/(2 pi) sqrt(24 / (N (N^2-1))) s/A. At 1 kHz, 48 kHz, 1 s and 60 dB SNR that is 2.5 uHz, 0.0025
 * ppm, so that 0.01 ppm is four standard deviations.
 *
 * @param frequencyHz             found, or as given
 * @param amplitudeVolts          peak, 0 or more
 * @param phaseRad                -pi to pi, of a cosine, at the first sample
 * @param offsetVolts             mean
 * @param residualRmsVolts        what the sine leaves unexplained: noise and distortion (NAD)
 * @param frequencyUncertaintyHz  one standard deviation, if the residual is white noise; 0 when the frequency was given
 * @param amplitudeUncertaintyVolts likewise
 * @param phaseUncertaintyRad     likewise
 * @param offsetUncertaintyVolts  likewise
 */
public record SineFit(
        double frequencyHz,
        double amplitudeVolts,
        double phaseRad,
        double offsetVolts,
        double residualRmsVolts,
        double frequencyUncertaintyHz,
        double amplitudeUncertaintyVolts,
        double phaseUncertaintyRad,
        double offsetUncertaintyVolts) {

    private static final int LEAST_FRAMES = 32;
    private static final int MOST_STEPS = 30;
    /** Steps end when they turn the sine's far ends by less than this: 1e-10 of a turn is far below any noise. */
    private static final double SETTLED_RAD = 1e-9;
    /** The rotating pointer is set anew so often that rounding stays below 1e-13. */
    private static final int FRAMES_PER_POINTER = 512;

    /**
     * Frequency, amplitude, phase and offset of the strongest tone; at least 256 samples and some 10 periods.
     *
     * @throws Refused if there is no steady tone to find
     */
    public static SineFit fourParameters(double[] volts, double rateHz) {
        Spectrum spectrum = Spectrum.of(volts, rateHz);
        int top = spectrum.largest(CosineWindow.LOBE_BINS, spectrum.bins() - 1, new boolean[spectrum.bins()]);
        if (top < 0 || spectrum.meanSquare(top) == 0) {
            throw new Refused("there is no tone in this recording, all samples are the same;"
                    + " check the cable and the level", "");
        }
        return fourParameters(volts, rateHz, spectrum.peak(top).frequencyHz());
    }

    /** The same, from a start within half a period over the whole recording of the truth. */
    public static SineFit fourParameters(double[] volts, double rateHz, double startHz) {
        checkFrequency(volts, rateHz, startHz);
        double radPerFrame = 2 * Math.PI * startHz / rateHz;
        double[] parts = solve(volts, radPerFrame, null);
        double half = volts.length / 2.0;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] next = solve(volts, radPerFrame, parts);
            double turn = next[3] / half;
            radPerFrame += turn;
            parts = next;
            if (!(radPerFrame > 0 && radPerFrame < Math.PI)) {
                break;
            }
            if (Math.abs(turn) * half < SETTLED_RAD) {
                return of(volts, rateHz, radPerFrame, solve(volts, radPerFrame, null), true);
            }
        }
        throw new Refused("no steady tone fits this recording, the search from " + SampleCheck.hz(startHz)
                + " did not settle", "play one steady tone, well above the noise");
    }

    /** Amplitude, phase and offset of a tone whose frequency is known; above 0 Hz, below half the sample rate. */
    public static SineFit threeParameters(double[] volts, double rateHz, double frequencyHz) {
        checkFrequency(volts, rateHz, frequencyHz);
        double radPerFrame = 2 * Math.PI * frequencyHz / rateHz;
        return of(volts, rateHz, radPerFrame, solve(volts, radPerFrame, null), false);
    }

    /** Signal over noise and distortion, both rms. */
    public double sinadDb() {
        return 20 * Math.log10(amplitudeVolts / Math.sqrt(2) / residualRmsVolts);
    }

    /** Effective number of bits: log2(full scale / (residual rms sqrt 12)), full scale from lowest to highest. */
    public double enobBits(double fullScaleVolts) {
        return Math.log(fullScaleVolts / (residualRmsVolts * Math.sqrt(12))) / Math.log(2);
    }

    private static void checkFrequency(double[] volts, double rateHz, double frequencyHz) {
        SampleCheck.check(volts, rateHz, LEAST_FRAMES, "a sine fit");
        if (!(frequencyHz > 0 && frequencyHz < rateHz / 2)) {
            throw new Refused("a sine fit at a rate of " + SampleCheck.hz(rateHz)
                    + " needs a frequency above 0 Hz and below " + SampleCheck.hz(rateHz / 2) + ", got "
                    + SampleCheck.hz(frequencyHz), "");
        }
    }

    private static SineFit of(double[] volts, double rateHz, double radPerFrame, double[] parts, boolean searched) {
        int n = volts.length;
        double squares = 0;
        Pointer pointer = new Pointer(n, radPerFrame);
        for (int i = 0; i < n; i++) {
            pointer.moveTo(i);
            double miss = volts[i] - parts[0] * pointer.cosine - parts[1] * pointer.sine - parts[2];
            squares += miss * miss;
        }
        double residual = Math.sqrt(squares / n);
        // unbiased: each fitted parameter takes one sample's worth of noise away
        double noise = Math.sqrt(squares / (n - (searched ? 4 : 3)));
        double amplitude = Math.hypot(parts[0], parts[1]);
        double phase = Math.atan2(-parts[1], parts[0]) - radPerFrame * pointer.middle;
        double frames = n;
        double radUncertainty = searched ? Math.sqrt(24 / (frames * (frames * frames - 1))) * noise / amplitude : 0;
        double middlePhase = Math.sqrt(2 / frames) * noise / amplitude;
        return new SineFit(
                radPerFrame * rateHz / (2 * Math.PI),
                amplitude,
                Math.IEEEremainder(phase, 2 * Math.PI),
                parts[2],
                residual,
                radUncertainty * rateHz / (2 * Math.PI),
                Math.sqrt(2 / frames) * noise,
                Math.hypot(middlePhase, radUncertainty * pointer.middle),
                noise / Math.sqrt(frames));
    }

    /**
     * Cosine part, sine part, offset, and (given the parts so far) by how much the far ends should turn; time is
     * counted from the middle, so that frequency and phase hardly pull on each other.
     */
    private static double[] solve(double[] volts, double radPerFrame, double[] parts) {
        int n = volts.length;
        int unknowns = parts == null ? 3 : 4;
        double[][] normal = new double[unknowns][unknowns + 1];
        double[] row = new double[unknowns];
        Pointer pointer = new Pointer(n, radPerFrame);
        double half = n / 2.0;
        for (int i = 0; i < n; i++) {
            pointer.moveTo(i);
            row[0] = pointer.cosine;
            row[1] = pointer.sine;
            row[2] = 1;
            if (unknowns == 4) {
                row[3] = (i - pointer.middle) / half * (parts[1] * pointer.cosine - parts[0] * pointer.sine);
            }
            for (int r = 0; r < unknowns; r++) {
                for (int c = r; c < unknowns; c++) {
                    normal[r][c] += row[r] * row[c];
                }
                normal[r][unknowns] += row[r] * volts[i];
            }
        }
        return LeastSquares.solve(normal);
    }

    /** Cosine and sine of a steadily growing angle that is 0 in the middle of the recording. */
    private static final class Pointer {
        final double middle;
        double cosine;
        double sine;
        private final double radPerFrame;
        private final double stepCosine;
        private final double stepSine;

        Pointer(int frames, double radPerFrame) {
            this.middle = (frames - 1) / 2.0;
            this.radPerFrame = radPerFrame;
            this.stepCosine = Math.cos(radPerFrame);
            this.stepSine = Math.sin(radPerFrame);
        }

        /** Frames come one after the other from 0. */
        void moveTo(int frame) {
            if (frame % FRAMES_PER_POINTER == 0) {
                double angle = radPerFrame * (frame - middle);
                cosine = Math.cos(angle);
                sine = Math.sin(angle);
                return;
            }
            double turned = cosine * stepCosine - sine * stepSine;
            sine = sine * stepCosine + cosine * stepSine;
            cosine = turned;
        }
    }
}
