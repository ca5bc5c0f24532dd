package understudy.calibrate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import understudy.calibrate.Interference.Kind;
import understudy.measure.ChainResponse;
import understudy.measure.SineFit;
import understudy.measure.SineSweep;
import understudy.measure.Spectrum;
import understudy.measure.ToneQuality;
import understudy.quantity.NumberText;
import understudy.quantity.Quantity;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;

/** Takes the recording of a test program apart. */
final class LoopbackAnalysis {

    /** The sweep fades out above. */
    static final double TOLD_PART = 0.95;

    /** Crystals are off by 100 ppm at most, two of them by 200. */
    private static final double MOST_CLOCK_PART = 1e-3;
    /** Converters are flat to a tenth of a decibel; tone controls begin at one. */
    private static final double MOST_UNEVEN_DB = 0.5;
    private static final double LEAST_EVEN_HZ = 20;
    private static final double CORNERS_AWAY = 4;
    /** With slow filters converters are flat up to here. */
    private static final double EVEN_PART_OF_RATE = 0.2;
    private static final double EVEN_STEP = Math.pow(10, 1.0 / 16);
    /** Of the highest tone: two slow filters in a row take 8 dB, a lower rate on the way 20 dB and more. */
    private static final double MOST_TOP_LOSS_DB = 12;
    /** A converter's gain is the same at both levels within hundredths. */
    private static final double MOST_GAIN_CHANGE_DB = 0.1;
    private static final double MOST_THD_DB = -50;
    /** Noise of a poor input is 60 dB down; a voice, a beep or a song is louder. */
    private static final double MOST_SILENT_PART = 1e-3;
    /** Much more noise beside the tone than in silence, and nearer than cheap converters' own. */
    private static final double MORE_NOISE = 4;
    private static final double LEAST_TONE_SNR_DB = 80;
    private static final double SETTLING_SECONDS = 0.2;
    private static final double[] MAINS_HZ = {50, 60};
    private static final int MAINS_ORDERS = 3;
    /** Of the rms in silence: seven tenths of it are half of its power. */
    private static final double MOST_HUM_PART = 0.7;

    private static final Remedy OWN_RATE =
            Remedy.of("set the device's own rate with ").set(Control.RATE).then(", and use no wireless device");

    private static final Remedy SAME_RATE =
            Remedy.of("set both to the same rate in the system's sound settings, or with ").set(Control.RATE);
    private static final String EFFECTS_OFF =
            "switch off sound effects, automatic levels and loudness control in the system's sound settings";

    private final TestProgram program;
    private final LoopbackRun run;
    private final double[] recorded;
    private final List<Interference> found = new ArrayList<>();

    LoopbackAnalysis(TestProgram program, LoopbackRun run, int channel) {
        this.program = program;
        this.run = run;
        this.recorded = run.channels()[channel];
    }

    LoopbackFindings findings() {
        checkRoughClock();
        // first in all of the recording, to find where it begins; then in its own part alone
        double firstAt = ChainResponse.of(program.sweep(), recorded).latencySeconds() * program.rateHz() - program.sweepAt();
        int start = (int) Math.rint(firstAt);
        if (start < 0 || start + program.silenceAt() > recorded.length) {
            throw new Refused("only a part of the test is in the recording: it would begin "
                    + NumberText.of(firstAt / program.rateHz(), Unit.SECOND) + " after the recording and last " + NumberText.of(program.soundSeconds(), Unit.SECOND)
                    + ", but " + NumberText.of((double) recorded.length / program.rateHz(), Unit.SECOND) + " were recorded", "try again");
        }
        double[] loud = part(start + program.toneAt() + settling(), start + program.quietToneAt() - settling() / 2);
        double[] quiet = part(start + program.quietToneAt() + settling(), start + program.highToneAt() - settling() / 2);
        SineFit tone = SineFit.fourParameters(loud, program.rateHz());
        ChainResponse response = ChainResponse.of(asRecorded(tone), part(start + program.sweepAt(), start + program.toneAt()));
        double latency = (double) (start - run.startedAtFrame()) / program.rateHz() + response.latencySeconds();
        ToneQuality quality = ToneQuality.of(Spectrum.of(loud, program.rateHz()), program.rateHz() / 2.0);
        double[] silence = part(start + settling() / 4, start + program.pulsesAt() - settling() / 4);

        checkInterruption();
        checkClock(tone);
        checkLevels(loud, quiet, tone, quality);
        checkEvenness(response);
        checkTop(start, tone);
        checkSilence(silence, tone.amplitudeVolts(), quality);
        checkPolarity(start, response);
        return LoopbackFindings.of(program, response, latency, (double) run.lateFrames() / program.rateHz(), tone, quality.thdDb(), noise(silence), found);
    }

    /** The sweep as the input's own clock takes samples of it; else a difference of 60 ppm would smear it over a millisecond. */
    private SineSweep asRecorded(SineFit tone) {
        SineSweep sweep = program.sweep();
        double ratio = tone.frequencyHz() / TestProgram.TONE_HZ;
        return new SineSweep(sweep.rateHz() / ratio, sweep.fromHz(), sweep.toHz(), sweep.seconds(), sweep.peakVolts());
    }

    /** A rate that is far off would leave no sweep to be found, but a tone all the same. */
    private void checkRoughClock() {
        double toneHz = Spectrum.of(recorded, program.rateHz()).peaks(1).get(0).frequencyHz();
        double ratio = toneHz / TestProgram.TONE_HZ;
        // a tone 5 % and more away is none of ours
        if (Math.abs(ratio - 1) > 2 * MOST_CLOCK_PART && Math.abs(ratio - 1) < 0.2) {
            throw new Refused(clock(toneHz), SAME_RATE);
        }
    }

    private void checkInterruption() {
        if (run.underruns() > 0 || run.overruns() > 0) {
            add(Kind.INTERRUPTED, "samples went missing, " + run.underruns() + " times while playing and " + run.overruns()
                    + " times while recording, and none may", Remedy.of("close other programs, then try again"));
        }
    }

    private void checkClock(SineFit tone) {
        if (Math.abs(tone.frequencyHz() / TestProgram.TONE_HZ - 1) > MOST_CLOCK_PART) {
            add(Kind.RESAMPLED, clock(tone.frequencyHz()), SAME_RATE);
        } else if (!run.hardware().isEmpty() && !run.hardware().endsWith(" " + program.rateHz() + " Hz")) {
            add(Kind.RESAMPLED, "the output's hardware ran at " + run.hardware() + ", but " + program.rateHz()
                    + " Hz were played: the system converts on the way", Remedy.of("set the hardware's own rate with ").set(Control.RATE));
        }
    }

    private static String clock(double toneHz) {
        return "a tone of " + NumberText.of(TestProgram.TONE_HZ, Unit.HERTZ, 6) + " comes back as " + new Quantity(toneHz, Unit.HERTZ).rounded(4) + ", which two clocks can't make ("
                + NumberText.of(TestProgram.TONE_HZ * MOST_CLOCK_PART, Unit.HERTZ, 6) + " at most): output and input run at different sample rates";
    }

    private void checkLevels(double[] loud, double[] quiet, SineFit tone, ToneQuality quality) {
        int half = loud.length / 2;
        double quietPeak = peak(quiet, tone) / TestProgram.QUIET_PART;
        double louderDb = decibels(tone.amplitudeVolts() / quietPeak);
        double driftDb = decibels(peak(Arrays.copyOfRange(loud, half, loud.length), tone) / peak(Arrays.copyOf(loud, half), tone));
        Remedy mend = Remedy.of(EFFECTS_OFF);
        if (Math.abs(louderDb) > MOST_GAIN_CHANGE_DB) {
            add(Kind.LIMITED, String.format(Locale.ROOT, "a loud tone comes back %.2f dB %s than a quiet one does for its"
                    + " level, %.1f dB is allowed: something limits or evens out loudness", Math.abs(louderDb),
                    louderDb < 0 ? "weaker" : "stronger", MOST_GAIN_CHANGE_DB), mend);
        } else if (Math.abs(driftDb) > MOST_GAIN_CHANGE_DB) {
            add(Kind.LIMITED, String.format(Locale.ROOT, "the level of a steady tone moves by %.2f dB within 2 s, %.1f dB is"
                    + " allowed: something sets the level by itself", driftDb, MOST_GAIN_CHANGE_DB), mend);
        } else if (quality.thdDb() > MOST_THD_DB) {
            add(Kind.LIMITED, String.format(Locale.ROOT, "the tone comes back with %.1f dB of harmonics, %.0f dB are allowed:"
                    + " something cuts it off, or is overdriven", quality.thdDb(), MOST_THD_DB),
                    Remedy.of("lower the recording level or ").set(Control.LEVEL).then("; " + EFFECTS_OFF));
        }
    }

    private double peak(double[] volts, SineFit tone) {
        return SineFit.threeParameters(volts, program.rateHz(), tone.frequencyHz()).amplitudeVolts();
    }

    /** Against the fit of gain and corner, away from the corner, where two couplings in a row differ from one. */
    private void checkEvenness(ChainResponse response) {
        double worstDb = 0;
        double worstHz = 0;
        double from = Math.max(LEAST_EVEN_HZ, CORNERS_AWAY * response.cornerHz());
        for (double hz = from; hz <= EVEN_PART_OF_RATE * program.rateHz(); hz *= EVEN_STEP) {
            double x = hz / response.cornerHz();
            double off = response.magnitudeDb(hz) - response.gainDb() - 10 * Math.log10(x * x / (1 + x * x));
            worstHz = Math.abs(off) > Math.abs(worstDb) ? hz : worstHz;
            worstDb = Math.abs(off) > Math.abs(worstDb) ? off : worstDb;
        }
        if (Math.abs(worstDb) > MOST_UNEVEN_DB) {
            add(Kind.EQUALISED, String.format(Locale.ROOT, "%s is %.1f dB %s than the rest, %.1f dB is allowed: something"
                    + " changes the sound",
                    new Quantity(worstHz, Unit.HERTZ).rounded(2), Math.abs(worstDb), worstDb < 0 ? "weaker" : "stronger",
                    MOST_UNEVEN_DB), Remedy.of("switch off equalisers and sound effects in the system's sound settings"));
        }
    }

    /** A good converter of rates leaves no noise, but it must end below half of the lower rate. */
    private void checkTop(int start, SineFit tone) {
        double hz = program.highToneHz() * tone.frequencyHz() / TestProgram.TONE_HZ;
        double[] top = part(start + program.highToneAt() + settling(), start + program.silenceAt() - settling() / 2);
        double peak = SineFit.threeParameters(top, program.rateHz(), hz).amplitudeVolts();
        double lossDb = decibels(tone.amplitudeVolts() * TestProgram.QUIET_PART / peak);
        if (lossDb > MOST_TOP_LOSS_DB) {
            add(Kind.RESAMPLED, String.format(Locale.ROOT, "a tone of %s comes back %.0f dB weaker than the others, %.0f dB are"
                    + " allowed: the system computes the samples anew for a lower rate, or packs the sound with loss",
                    NumberText.of(program.highToneHz(), Unit.HERTZ, 6), lossDb, MOST_TOP_LOSS_DB), OWN_RATE);
        }
    }

    private void checkSilence(double[] silence, double tonePart, ToneQuality quality) {
        double silencePart = noise(silence);
        if (silencePart > MOST_SILENT_PART * tonePart) {
            String seen = String.format(Locale.ROOT, "where silence was played, %.2f %% of the tone comes back, %.1f %% is"
                    + " allowed: ", 100 * silencePart / tonePart, 100 * MOST_SILENT_PART);
            double mainsHz = Arrays.stream(MAINS_HZ).filter(hz -> humPart(silence, hz) > MOST_HUM_PART * silencePart)
                    .findFirst().orElse(0);
            if (mainsHz > 0) {
                add(Kind.HUM, seen + "mains hum of " + NumberText.of(mainsHz, Unit.HERTZ, 6), Remedy.of("run the computer on battery,"
                        + " keep the cable short and away from mains leads, check its ground"));
            } else {
                add(Kind.MIXED, seen + "other programs' sounds, or noise, are mixed in", Remedy.of("close other programs, switch off that"
                        + " the input is played back, keep the cable short"));
            }
            return;
        }
        double besideTone = tonePart / Math.sqrt(2) * Math.pow(10, -quality.snrDb() / 20);
        boolean named = found.stream().anyMatch(other -> other.kind() == Kind.LIMITED || other.kind() == Kind.RESAMPLED);
        if (!named && quality.snrDb() < LEAST_TONE_SNR_DB && besideTone > MORE_NOISE * silencePart) {
            add(Kind.RESAMPLED, String.format(Locale.ROOT, "with the tone comes noise that silence does not have, only %.1f dB"
                    + " below it, %.0f dB and more are right, strongest at %s: the system computes the samples anew for another"
                    + " rate, or packs the sound with loss",
                    quality.snrDb(), LEAST_TONE_SNR_DB, NumberText.of(quality.largestOther().frequencyHz(), Unit.HERTZ, 6)), OWN_RATE);
        }
    }

    /** Rms of the mains frequency and its first overtones. */
    private double humPart(double[] silence, double mainsHz) {
        double squares = 0;
        for (int order = 1; order <= MAINS_ORDERS; order++) {
            double peak = SineFit.threeParameters(silence, program.rateHz(), order * mainsHz).amplitudeVolts();
            squares += peak * peak / 2;
        }
        return Math.sqrt(squares);
    }

    /** The pulses must agree with the sweep. */
    private void checkPolarity(int start, ChainResponse response) {
        double up = 0;
        double down = 0;
        for (int k = 0; k < TestProgram.PULSES; k++) {
            int at = start + program.pulsesAt() + k * program.frames(TestProgram.PULSES_APART_SECONDS);
            double[] around = part(at, at + 2 * program.frames(TestProgram.PULSE_SECONDS));
            up += Arrays.stream(around).max().orElseThrow();
            down -= Arrays.stream(around).min().orElseThrow();
        }
        if (down > up != response.inverted()) {
            add(Kind.EQUALISED, "a positive pulse comes back " + (down > up ? "negative" : "positive") + ", but the sweep says "
                    + (response.inverted() ? "inverted" : "not inverted") + ": something turns the phase",
                    Remedy.of("switch off sound effects in the system's sound settings"));
        }
    }

    private double[] part(int from, int to) {
        return Arrays.copyOfRange(recorded, Math.max(0, from), Math.min(recorded.length, to));
    }

    private int settling() {
        return program.frames(SETTLING_SECONDS);
    }

    /** Rms about the mean. */
    private static double noise(double[] samples) {
        double mean = Arrays.stream(samples).average().orElse(0);
        return Math.sqrt(Arrays.stream(samples).map(v -> (v - mean) * (v - mean)).average().orElse(0));
    }

    private static double decibels(double ratio) {
        return 20 * Math.log10(ratio);
    }

    private void add(Kind kind, String seen, Remedy remedy) {
        found.add(new Interference(kind, seen, remedy));
    }
}
