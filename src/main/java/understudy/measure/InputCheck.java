package understudy.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import understudy.measure.InputFault.Kind;
import understudy.refusal.Refused;

/**
 * Looks a recording over before anything is measured in it, and calls by name what is wrong.
 *
 * @param rateHz          frames a second
 * @param fullScaleVolts  the largest sample that can be recorded; 1 for samples from -1 to 1
 * @param expectedSeconds how long the signal should last from the first sample; 0 if unknown
 * @param signalHz        what the signal's own lines are multiples of (turns a second, or the tone), so that they don't
 *                        pass for hum; 0 if it has none
 */
public record InputCheck(double rateHz, double fullScaleVolts, double expectedSeconds, double signalHz) {

    /** Of full scale: below -60 dB is what an open input picks up. */
    static final double SILENT_PART = 0.001;
    /** Of full scale: below -30 dB, 5 of 16 bits lie idle. */
    static final double LOW_PART = 0.03;
    static final double HIGH_PART = 0.98;
    /** 16-bit samples end at 0.99997, 24-bit ones nearer; one or two may touch it, three in a row stay there. */
    private static final double CLIP_PART = 0.9999;
    private static final int CLIP_FRAMES = 3;
    /** Hum counts from -80 dB of full scale and -50 dB of the signal on. */
    private static final double HUM_PART = 1e-4;
    private static final double HUM_OF_SIGNAL = 0.003;
    /** A line holds ten times what its surroundings would put in its place. */
    private static final double LINE_OVER_NOISE = 10;
    private static final double[] MAINS_HZ = {50, 60};
    private static final int[] MAINS_ORDERS = {1, 2, 3, 4, 5};
    /** Sparse pulses leave quiet stretches; the last one must be this much longer to be an end. */
    private static final double LONGER_THAN_EVER = 4;
    private static final double LEAST_EARLY_SECONDS = 0.1;
    private static final double SOUND_OF_PEAK = 0.05;

    public InputCheck {
        if (!(rateHz > 0 && fullScaleVolts > 0 && expectedSeconds >= 0 && signalHz >= 0)) {
            throw new Refused("an input check needs a rate and a full scale above 0, got "
                    + SampleCheck.hz(rateHz) + " and " + SampleCheck.volts(fullScaleVolts)
                    + ", and times and frequencies of 0 or more, got " + SampleCheck.seconds(expectedSeconds)
                    + " and " + SampleCheck.hz(signalHz), "");
        }
    }

    /** Everything that is wrong, channel by channel; empty when all is well. */
    public List<InputFault> of(double[][] volts) {
        List<InputFault> faults = new ArrayList<>();
        boolean anySignal = false;
        for (double[] channel : volts) {
            anySignal |= peak(channel) >= SILENT_PART * fullScaleVolts;
        }
        for (int c = 0; c < volts.length; c++) {
            checkLevel(volts[c], c + 1, anySignal, faults);
            checkHum(volts[c], c + 1, faults);
            checkEnd(volts[c], c + 1, faults);
        }
        return faults;
    }

    private void checkLevel(double[] volts, int channel, boolean anySignal, List<InputFault> faults) {
        double peak = peak(volts);
        double part = peak / fullScaleVolts;
        if (part < SILENT_PART) {
            String found = peak == 0
                    ? "every sample is zero"
                    : String.format(Locale.ROOT, "only noise, at most %.4f %% of full scale", 100 * part);
            String what = anySignal
                    ? "other channels have a signal; check this channel's plug, or choose the channel that has it"
                    : peak == 0
                            ? "is the input muted, or recording not permitted to this program?"
                            : "check that the cable runs from the output to this input, and the recording level";
            add(faults, anySignal ? Kind.CHANNEL_DEAD : Kind.SILENT, channel, found + "; " + what);
        } else if (longestAtEnd(volts) >= CLIP_FRAMES) {
            add(faults, Kind.CLIPPED, channel, String.format(Locale.ROOT,
                    "clipped, %d samples in a row at the end of the range, none should be; lower the recording level",
                    longestAtEnd(volts)));
        } else if (part > HIGH_PART) {
            add(faults, Kind.TOO_HIGH, channel, String.format(Locale.ROOT,
                    "too high, peaks at %.1f %% of full scale, at most %.0f %% leave room; lower the recording level",
                    100 * part, 100 * HIGH_PART));
        } else if (part < LOW_PART) {
            add(faults, Kind.TOO_LOW, channel, String.format(Locale.ROOT,
                    "too low, peaks at %.2f %% of full scale, at least %.0f %% are needed; raise the recording level,"
                            + " or use a line input instead of a microphone input", 100 * part, 100 * LOW_PART));
        }
    }

    private void checkHum(double[] volts, int channel, List<InputFault> faults) {
        // 50 and 60 Hz are told apart when a lobe of 17 bins and its surroundings fit between them
        if (volts.length < 4 * rateHz || peak(volts) == 0) {
            return;
        }
        Spectrum spectrum = Spectrum.of(volts, rateHz);
        double all = spectrum.bandRmsVolts(0, rateHz / 2);
        for (double mainsHz : MAINS_HZ) {
            double sum = 0;
            boolean base = false;
            for (int order : MAINS_ORDERS) {
                double line = isOwn(order * mainsHz, spectrum.binHz()) ? 0 : line(spectrum, order * mainsHz);
                base |= order == 1 && line > 0;
                sum += line;
            }
            double hum = Math.sqrt(sum);
            if (base && hum > Math.max(HUM_PART * fullScaleVolts, HUM_OF_SIGNAL * all)) {
                add(faults, Kind.HUM, channel, String.format(Locale.ROOT,
                        "mains hum of %.0f Hz, %.2f %% of the recording, at most %.1f %% are harmless; run the computer on"
                                + " battery, keep the cable short and away from mains leads, check its ground",
                        mainsHz, 100 * hum / all, 100 * HUM_OF_SIGNAL));
            }
        }
    }

    private boolean isOwn(double hz, double binHz) {
        return signalHz > 0 && Math.abs(hz - Math.rint(hz / signalHz) * signalHz) <= CosineWindow.LOBE_BINS * binHz;
    }

    /** Mean square volts of a line; 0 if there is none, only what surrounds it. */
    private static double line(Spectrum spectrum, double hz) {
        int lobe = CosineWindow.LOBE_BINS;
        int centre = spectrum.bin(hz);
        if (centre - 3 * lobe < lobe || centre + 3 * lobe >= spectrum.bins()) {
            return 0;
        }
        double own = spectrum.sum(centre - lobe, centre + lobe);
        double around = spectrum.sum(centre - 3 * lobe, centre - lobe - 1) + spectrum.sum(centre + lobe + 1, centre + 3 * lobe);
        double expected = around * (2 * lobe + 1) / (4 * lobe);
        return own > LINE_OVER_NOISE * expected ? own : 0;
    }

    private void checkEnd(double[] volts, int channel, List<InputFault> faults) {
        double seconds = volts.length / rateHz;
        if (expectedSeconds == 0) {
            return;
        }
        // half a frame for rounding of the expected time
        if (seconds < expectedSeconds - 0.5 / rateHz) {
            add(faults, Kind.ENDS_EARLY, channel, String.format(Locale.ROOT,
                    "the recording ends early, after %.3f s of %.3f s; record until all is played", seconds, expectedSeconds));
            return;
        }
        double peak = peak(volts);
        if (peak < SILENT_PART * fullScaleVolts) {
            return;
        }
        int last = 0;
        int longest = 0;
        for (int i = 0; i < volts.length; i++) {
            if (Math.abs(volts[i]) > SOUND_OF_PEAK * peak) {
                longest = Math.max(longest, i - last);
                last = i;
            }
        }
        double missing = expectedSeconds - last / rateHz;
        if (missing > Math.max(LEAST_EARLY_SECONDS, LONGER_THAN_EVER * longest / rateHz)) {
            add(faults, Kind.ENDS_EARLY, channel, String.format(Locale.ROOT,
                    "the signal stops early, after %.3f s of %.3f s; check that the output played to its end, and the cable",
                    last / rateHz, expectedSeconds));
        }
    }

    private int longestAtEnd(double[] volts) {
        int longest = 0;
        int now = 0;
        double before = 0;
        for (double v : volts) {
            boolean atEnd = Math.abs(v) >= CLIP_PART * fullScaleVolts;
            now = !atEnd ? 0 : v * before > 0 ? now + 1 : 1;
            before = v;
            longest = Math.max(longest, now);
        }
        return longest;
    }

    private static double peak(double[] volts) {
        double peak = 0;
        for (double v : volts) {
            peak = Math.max(peak, Math.abs(v));
        }
        return peak;
    }

    private static void add(List<InputFault> faults, Kind kind, int channel, String message) {
        faults.add(new InputFault(kind, channel, "channel " + channel + ": " + message));
    }
}
