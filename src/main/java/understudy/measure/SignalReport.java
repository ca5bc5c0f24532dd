package understudy.measure;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Supplier;
import understudy.refusal.Refused;

/**
 * What a set of instruments says of one recorded channel, all at once. What can't be told of this signal is empty.
 *
 * @param rateHz       frames a second
 * @param leftOut      seconds of silence and fading that were left out before the sound begins
 * @param seconds      of sound that were measured
 * @param peakVolts    largest magnitude
 * @param rmsVolts     mean included
 * @param meanVolts    the steady part
 * @param spectrum     of it
 * @param tone         how pure the strongest line is, up to half the rate
 * @param wheel        teeth, gaps and speed, if there are events
 * @param pulses       by IEC 60469, if it has two levels
 * @param notHarmonic  largest component below 20 kHz that is no harmonic of one turn, if the speed is steady and known
 */
public record SignalReport(
        double rateHz,
        double leftOut,
        double seconds,
        double peakVolts,
        double rmsVolts,
        double meanVolts,
        Spectrum spectrum,
        ToneQuality tone,
        Optional<DetectedWheel> wheel,
        Optional<Pulses> pulses,
        Optional<Spectrum.Peak> notHarmonic) {

    /** Of the peak: what counts as sound when looking for its beginning and end. */
    private static final double SOUND_OF_PEAK = 0.01;
    /** Silence at an end is left out from here on, and what fades in or out beside it. */
    private static final double LEAST_SILENT_SECONDS = 0.1;
    private static final double FADE_SECONDS = 0.02;
    /** Silence at an end must be this much longer than any within, so that sparse pulses are not taken for an end. */
    private static final double LONGER_THAN_WITHIN = 4;
    /** Above this a signal is called a tone: its distortion is below a tenth. */
    private static final double TONE_SINAD_DB = 20;
    private static final double MOST_OTHER_HZ = 20_000;
    /** Ramps of a per cent show, jitter of a ring's teeth by a thousandth does not. */
    private static final double STEADY_PART = 0.002;

    /** @throws Refused if it is too short, or nothing moves in it */
    public static SignalReport of(double[] recorded, double rateHz) {
        SampleCheck.check(recorded, rateHz, Spectrum.LEAST_FRAMES, "a measurement");
        int[] sound = soundOf(recorded, rateHz);
        double[] volts = Arrays.copyOfRange(recorded, sound[0], sound[1]);
        Spectrum spectrum = Spectrum.of(volts, rateHz);
        ToneQuality tone = ToneQuality.of(spectrum, rateHz / 2);
        Optional<DetectedWheel> wheel = tried(() -> WheelDetector.detect(volts, rateHz));
        Optional<Pulses> pulses = wheel.filter(found -> found.sensor() == DetectedWheel.Sensor.TWO_LEVEL)
                .flatMap(found -> tried(() -> Pulses.of(volts, rateHz)));
        Optional<Spectrum.Peak> other = wheel.filter(SignalReport::steady).flatMap(found -> tried(() ->
                spectrum.largestNotHarmonic(turnHz(found), Math.min(MOST_OTHER_HZ, rateHz / 2))));
        return new SignalReport(rateHz, sound[0] / rateHz, volts.length / rateHz,
                Arrays.stream(volts).map(Math::abs).max().orElseThrow(),
                Math.sqrt(Arrays.stream(volts).map(v -> v * v).average().orElseThrow()),
                Arrays.stream(volts).average().orElseThrow(),
                spectrum, tone, wheel, pulses, other);
    }

    /** The part of a recording that sounds, without silence and fades around it; the same that {@link #of} measures. */
    public static double[] sound(double[] recorded, double rateHz) {
        int[] sound = soundOf(recorded, rateHz);
        return Arrays.copyOfRange(recorded, sound[0], sound[1]);
    }

    /** Whether one line holds nearly everything. */
    public boolean isTone() {
        return tone.sinadDb() > TONE_SINAD_DB;
    }

    /** Turns per second on average over whole turns, or events per second where the teeth of a turn can't be told. */
    public static double turnHz(DetectedWheel wheel) {
        int perTurn = Math.max(1, wheel.eventsPerTurn());
        double[] instants = wheel.instantsSeconds();
        int turns = (instants.length - 1) / perTurn;
        return turns == 0
                ? wheel.eventRateHz() / perTurn
                : turns / (instants[turns * perTurn] - instants[0]);
    }

    /** Speed over each whole turn that ends with a tooth, in turns (or events) per second; empty within the first turn. */
    public static double[] turnSpeedsHz(DetectedWheel wheel) {
        int perTurn = Math.max(1, wheel.eventsPerTurn());
        double[] instants = wheel.instantsSeconds();
        double[] speeds = new double[Math.max(0, instants.length - perTurn)];
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] = 1 / (instants[i + perTurn] - instants[i]);
        }
        return speeds;
    }

    /** Whether the speed from turn to turn keeps within {@value #STEADY_PART} of its mean, all along. */
    public static boolean steady(DetectedWheel wheel) {
        double[] speeds = turnSpeedsHz(wheel);
        Arrays.sort(speeds);
        // the outer hundredths may belong to damaged teeth
        int aside = speeds.length / 100;
        return speeds.length > 0
                && speeds[speeds.length - 1 - aside] - speeds[aside] < 2 * STEADY_PART * speeds[speeds.length / 2];
    }

    private static <T> Optional<T> tried(Supplier<T> measurement) {
        try {
            return Optional.of(measurement.get());
        } catch (Refused e) {
            return Optional.empty(); // this instrument has nothing to say of such a signal
        }
    }

    /** First frame, and the one after the last. */
    private static int[] soundOf(double[] volts, double rateHz) {
        double threshold = SOUND_OF_PEAK * Arrays.stream(volts).map(Math::abs).max().orElse(0);
        int first = -1;
        int last = 0;
        int within = 0;
        for (int i = 0; i < volts.length; i++) {
            if (Math.abs(volts[i]) > threshold) {
                within = first < 0 ? 0 : Math.max(within, i - last);
                first = first < 0 ? i : first;
                last = i;
            }
        }
        double least = Math.max(LEAST_SILENT_SECONDS * rateHz, LONGER_THAN_WITHIN * within);
        int fade = (int) (FADE_SECONDS * rateHz);
        int from = first > least ? first + fade : 0;
        int to = volts.length - last > least ? last + 1 - fade : volts.length;
        // of something shorter than its own fades nothing is left out
        return to - from < Spectrum.LEAST_FRAMES ? new int[] {0, volts.length} : new int[] {from, to};
    }
}
