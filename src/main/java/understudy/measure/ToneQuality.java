package understudy.measure;

import understudy.refusal.Refused;

/**
 * How pure the strongest tone of a recording is, by its spectrum. Terms as in IEEE Std 1057-2017: SINAD, THD, SFDR,
 * ENOB. Harmonics are those of orders 2 to 10, each where it folds to if it lies above half the sample rate.
 *
 * <p>What counts as noise: everything from the lowest bins that are free of the offset up to {@code upToHz}, but for
 * the tone's own lobe (17 bins). Those bins' own noise is left out: with n bins the noise reads 17/n too low, below
 * 0.01 dB for 0.5 s at 48 kHz.
 *
 * @param frequencyHz    of the tone
 * @param amplitudeVolts peak
 * @param sinadDb        tone over noise and distortion, rms
 * @param snrDb          tone over noise, harmonics left out
 * @param thdDb          harmonics over tone, rms: negative for a clean tone; minus infinity if none shows
 * @param sfdrDb         tone over the largest other component, harmonic or not
 * @param largestOther   that component
 * @param noiseRmsVolts  noise and distortion together
 */
public record ToneQuality(
        double frequencyHz,
        double amplitudeVolts,
        double sinadDb,
        double snrDb,
        double thdDb,
        double sfdrDb,
        Spectrum.Peak largestOther,
        double noiseRmsVolts) {

    private static final int MOST_ORDER = 10;

    /**
     * @param spectrum of the recording
     * @param upToHz   where the band ends that counts; half the sample rate or less
     * @throws Refused if there is no tone in it
     */
    public static ToneQuality of(Spectrum spectrum, double upToHz) {
        int last = spectrum.bin(upToHz);
        boolean[] taken = new boolean[spectrum.bins()];
        int top = spectrum.largest(CosineWindow.LOBE_BINS, last, taken);
        if (top < 0 || spectrum.meanSquare(top) == 0) {
            throw new Refused("there is no tone in this recording, all samples are the same;"
                    + " check the cable and the level", "");
        }
        Spectrum.Peak tone = spectrum.peak(top);
        for (int k = 0; k < CosineWindow.LOBE_BINS; k++) {
            taken[k] = true;
        }
        double power = spectrum.take(top, taken);
        Spectrum.Peak other = new Spectrum.Peak(0, 0);
        int next = spectrum.largest(CosineWindow.LOBE_BINS, last, taken);
        double rest = rest(spectrum, last, taken);
        if (next >= 0) {
            double amplitude = Math.sqrt(2 * spectrum.take(next, taken.clone()));
            other = new Spectrum.Peak(spectrum.peak(next).frequencyHz(), amplitude);
        }
        double harmonics = 0;
        for (int order = 2; order <= MOST_ORDER; order++) {
            int at = spectrum.bin(folded(order * tone.frequencyHz(), spectrum.binHz() * 2 * (spectrum.bins() - 1)));
            if (at <= last) {
                harmonics += spectrum.take(at, taken);
            }
        }
        return new ToneQuality(
                tone.frequencyHz(),
                Math.sqrt(2 * power),
                decibels(power / rest),
                decibels(power / rest(spectrum, last, taken)),
                decibels(harmonics / power),
                decibels(2 * power / (other.amplitudeVolts() * other.amplitudeVolts())),
                other,
                Math.sqrt(rest));
    }

    /**
     * Effective number of bits: those of an ideal converter of that full scale with as much noise and distortion,
     * log2(full scale / (noise rms sqrt 12)).
     *
     * @param fullScaleVolts from lowest to highest value that can be recorded
     */
    public double enobBits(double fullScaleVolts) {
        return Math.log(fullScaleVolts / (noiseRmsVolts * Math.sqrt(12))) / Math.log(2);
    }

    private static double rest(Spectrum spectrum, int last, boolean[] taken) {
        double sum = 0;
        for (int k = 0; k <= last; k++) {
            sum += taken[k] ? 0 : spectrum.meanSquare(k);
        }
        return sum;
    }

    private static double folded(double hz, double rateHz) {
        return Math.abs(hz - Math.rint(hz / rateHz) * rateHz);
    }

    private static double decibels(double powerRatio) {
        return 10 * Math.log10(powerRatio);
    }
}
