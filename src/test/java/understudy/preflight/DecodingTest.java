package understudy.preflight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import understudy.pattern.Tone;
import understudy.rig.Arming;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.Divider;
import understudy.rig.FrontEnd;
import understudy.rig.Input;
import understudy.rig.Lead;
import understudy.rig.PulledUpInput;
import understudy.rig.ReluctorInput;
import understudy.rig.ReluctorInput.Edge;
import understudy.rig.Rig;
import understudy.rig.Spread;

class DecodingTest {

    /** Straight lines between fine steps miss a bell by 1/(8 24^2) of the swing. */
    private static final double LINES = 1 / (8.0 * 24 * 24);

    @ParameterizedTest
    @ValueSource(doubles = {3, 97, 1234, 7000})
    void aSineIsLateByTheArcsineOfItsThreshold(double hz) {
        Setup setup = Bench.setup(Bench.tone(Tone.Shape.SINE, 0.5, 1), Bench.rig(0), Bench.hysteresis(0.4, Edge.RISING));
        Decoding judged = Decoding.of(setup, hz);
        assertThat(judged.verdict()).isEqualTo(DecodingVerdict.DECODED);
        // a level that is off by LINES of the swing of 2 V moves the crossing by that over the slope, cos(arcsin 0.4)
        double tolerance = Math.toDegrees(2 * LINES / Math.sqrt(1 - 0.16));
        assertThat(judged.meanLateDeg()).isCloseTo(Math.toDegrees(Math.asin(0.4)), within(tolerance));
        assertThat(judged.timingErrorDeg()).isCloseTo(Math.toDegrees(Math.asin(0.4)), within(tolerance));
        assertThat(judged.marginVolts()).isCloseTo(0.6, within(2 * LINES));
        assertThat(judged.marginDb()).isCloseTo(20 * Math.log10(1 / 0.4), within(20 * 2 * LINES / Math.log(10)));
    }

    @ParameterizedTest
    @CsvSource({"36, 1, 0.3, 2", "36, 1, 0.3, 60", "36, 1, 0.2, 15", "60, 2, 0.3, 15", "12, 1, 0.25, 120"})
    void aReluctorIsLateByWhatItsFluxSays(int positions, int missing, double pole, double hz) {
        double threshold = 0.3;
        Setup setup = Bench.setup(
                Bench.coil(positions, missing, pole, 2, 2), Bench.rig(0), Bench.hysteresis(threshold, Edge.FALLING))
                .withLevel(Math.max(1, 10 / hz)); // back to 2 V peak to peak where the law gives less
        Decoding judged = Decoding.of(setup, hz);
        double pitch = 360.0 / positions;
        double worst = 0;
        double sum = 0;
        for (int tooth = 0; tooth < positions - missing; tooth++) {
            double late = latest(positions, missing, pole, threshold, tooth * pitch)
                    - latest(positions, missing, pole, 0, tooth * pitch);
            worst = Math.max(worst, late);
            sum += late;
        }
        assertThat(judged.verdict()).isEqualTo(DecodingVerdict.DECODED);
        assertThat(judged.countedPerTurn()).isEqualTo(positions - missing);
        // volts off by LINES of 2 V, over a slope of at least pi V a pitch and half of that at the threshold
        double tolerance = 2 * LINES / (Math.PI / 2) * pitch;
        assertThat(judged.timingErrorDeg()).isCloseTo(worst, within(tolerance));
        // the events counted are two turns and a bit: the teeth of that bit, differing by under a tenth of a pitch
        assertThat(judged.meanLateDeg()).isCloseTo(sum / (positions - missing), within(tolerance + 0.01 * pitch));
    }

    /** Where the volts fall through minus the threshold next to a tooth's centre, by halving. */
    private static double latest(int positions, int missing, double pole, double threshold, double centreDeg) {
        double pitch = 360.0 / positions;
        double low = centreDeg - pitch / 5;
        double high = centreDeg + pitch / 4;
        for (int i = 0; i < 50; i++) {
            double middle = 0.5 * (low + high);
            if (Bench.coilVolts(positions, missing, pole, 2, middle) > -threshold) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    @ParameterizedTest
    @CsvSource({"0.1, 0.5", "0.3, 0.25", "1, 0.5", "1, 0.25", "3, 0.5", "10, 0.25"})
    void aSquareSettlesBehindItsCouplingAsTheExactHighPassSays(double periodsPerTau, double duty) {
        double tauSeconds = 0.1;
        double hz = 1 / (periodsPerTau * tauSeconds);
        Setup setup = Bench.setup(Bench.tone(Tone.Shape.SQUARE, duty, 1), Bench.rig(1 / (2 * Math.PI * tauSeconds)),
                Bench.hysteresis(0.2, Edge.RISING)).withCorrection(false);
        Decoding judged = Decoding.of(setup, hz);
        double whole = -Math.expm1(-periodsPerTau);
        double above = 2 * -Math.expm1(-periodsPerTau * (1 - duty)) / whole; // after the rising edge
        double below = 2 * -Math.expm1(-periodsPerTau * duty) / whole;
        assertThat(judged.verdict()).isEqualTo(DecodingVerdict.DECODED);
        // the gain is told at 1 kHz: 1e-6; edges of 1.5 frames top out 3 sigma late, 1e-4 s of 0.1 s of droop: 0.1 %; what
        // has not settled is (period/tau)^2/50 of 2 V, after two periods less: at most 0.4 %; the mean: 1 in 4000 frames
        assertThat(judged.marginVolts()).isCloseTo(Math.min(above, below) - 0.2, within(2 * (0.001 + 0.004 + 0.00025)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {5, 20, 60, 400})
    void droopLetsASineLead(double hz) {
        Setup setup = Bench.setup(Bench.tone(Tone.Shape.SINE, 0.5, 1), Bench.rig(20), Bench.hysteresis(0.01, Edge.RISING))
                .withCorrection(false);
        double gain = hz / Math.hypot(hz, 20);
        double expected = -Math.toDegrees(Math.atan(20 / hz)) + Math.toDegrees(Math.asin(0.01 / gain));
        // lines, and 0.1 % of rest of what had to settle, over a slope of 1
        assertThat(Decoding.of(setup, hz).meanLateDeg()).isCloseTo(expected, within(Math.toDegrees(2 * LINES + 0.002)));
        double corrected = Decoding.of(setup.withCorrection(true), hz).meanLateDeg();
        assertThat(corrected).isCloseTo(Math.toDegrees(Math.asin(0.01)), within(Math.toDegrees(2 * LINES + 0.002)));
    }

    /** A corner of 20 Hz at 200 rpm leads by some 0.1 deg on 60-2 and 2.5 deg on 12-1. */
    @ParameterizedTest
    @CsvSource({"60, 2, 0.1", "12, 1, 2.5"})
    void droopLetsCrankWheelsLead(int positions, int missing, double roundedLeadDeg) {
        double speedHz = 200 / 60.0;
        Setup setup = Bench.setup(Bench.coil(positions, missing, 0.3, 2, 2), Bench.rig(20), Bench.zeroCrossing());
        Decoding plain = Decoding.of(setup.withCorrection(false), speedHz);
        double[] leads = leads(positions, missing, speedHz);
        double mean = Arrays.stream(leads).average().orElseThrow();
        assertThat(plain.verdict()).isEqualTo(DecodingVerdict.DECODED);
        // the teeth of a turn and a bit: those of the bit differ by up to the spread of all, a fifth of the turn at most
        double spread = Arrays.stream(leads).max().orElseThrow() - Arrays.stream(leads).min().orElseThrow();
        assertThat(-plain.meanLateDeg()).isCloseTo(mean, within(spread / 5));
        assertThat(-plain.timingErrorDeg()).isCloseTo(Arrays.stream(leads).max().orElseThrow(), within(0.01 * roundedLeadDeg));
        assertThat(mean).isCloseTo(roundedLeadDeg, within(0.05 * roundedLeadDeg));
        assertThat(Decoding.of(setup, speedHz).timingErrorDeg()).isCloseTo(0, within(0.01 * roundedLeadDeg));
    }

    /** By how much a high-pass of 20 Hz makes each tooth's zero crossing early: harmonic by harmonic. */
    private static double[] leads(int positions, int missing, double speedHz) {
        int orders = 6 * positions; // 99.9 % of the energy lies below half of that
        int samples = 64 * positions;
        double[] cosines = new double[orders + 1];
        double[] sines = new double[orders + 1];
        for (int i = 0; i < samples; i++) {
            double volts = Bench.coilVolts(positions, missing, 0.3, 2, 360.0 * i / samples) * 2 / samples;
            for (int k = 1; k <= orders; k++) {
                cosines[k] += volts * Math.cos(2 * Math.PI * k * i / samples);
                sines[k] += volts * Math.sin(2 * Math.PI * k * i / samples);
            }
        }
        double[] leads = new double[positions - missing];
        double pitch = 360.0 / positions;
        for (int tooth = 0; tooth < leads.length; tooth++) {
            leads[tooth] = fallsAt(cosines, sines, 0, tooth * pitch, pitch)
                    - fallsAt(cosines, sines, 20 / speedHz, tooth * pitch, pitch);
        }
        return leads;
    }

    private static double fallsAt(double[] cosines, double[] sines, double cornerOrder, double centreDeg, double pitch) {
        double low = centreDeg - 0.25 * pitch;
        double high = centreDeg + 0.1 * pitch;
        for (int i = 0; i < 40; i++) {
            double middle = 0.5 * (low + high);
            double volts = 0;
            for (int k = 1; k < cosines.length; k++) {
                double angle = Math.toRadians(k * middle) + Math.atan2(cornerOrder, k);
                volts += (cosines[k] * Math.cos(angle) + sines[k] * Math.sin(angle)) * k / Math.hypot(k, cornerOrder);
            }
            if (volts > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** 15 k and 47 nF are 226 Hz, and with them 1.41 V peak falls below 0.16 V above some 2 kHz. */
    @Test
    void aFilterLosesFastSignals() {
        ReluctorInput input = Bench.input(
                new Arming.Hysteresis(-0.16, 0.16), Edge.RISING, 15e3, Optional.of(Spread.exactly(47e-9)));
        Setup setup = Bench.setup(Bench.tone(Tone.Shape.SINE, 0.5, 1.41), Bench.rig(0), input);
        // in series with the filter's 15 kohm: what drives the pins, 9 kohm beside 1 kohm; and 9 kohm carry less then
        double cornerHz = 1 / (2 * Math.PI * (15e3 + 900) * 47e-9);
        double lostHz = cornerHz * Math.sqrt(Math.pow(1.41 / 0.16, 2) - 1);
        assertThat(lostHz).isBetween(1800.0, 2100.0);
        // the scale is taken at 1 kHz under the load of the filter; within 5 % that changes nothing of the verdict
        assertThat(Decoding.of(setup, 0.93 * lostHz).verdict()).isEqualTo(DecodingVerdict.DECODED);
        assertThat(Decoding.of(setup, 1.07 * lostHz).verdict()).isEqualTo(DecodingVerdict.SILENT);
    }

    @Test
    void armingAtMostOfTheLastPeakLosesTheToothBehindTheGap() {
        // beside the gap a pole of 30 % gives 1.6 times the usual peak: 0.8 of that is more than the next tooth has
        Setup setup = Bench.setup(Bench.coil(36, 1, 0.3, 2, 2), Bench.rig(0),
                Bench.input(new Arming.Adaptive(0.8, 0.05, 1), Edge.FALLING, 1, Optional.empty()));
        Decoding judged = Decoding.of(setup, 13);
        assertThat(judged.verdict()).isEqualTo(DecodingVerdict.MISCOUNTED);
        assertThat(judged.countedPerTurn()).isEqualTo(34);
        // the worst tooth is the second, a pitch after the first behind the gap
        double peak = 0;
        double beside = 0;
        for (double deg = 0; deg < 20; deg += 0.01) {
            peak = Math.max(peak, Bench.coilVolts(36, 1, 0.3, 2, deg + 100));
            beside = Math.max(beside, Bench.coilVolts(36, 1, 0.3, 2, deg - 15));
        }
        assertThat(beside / peak).isCloseTo(1.6, within(0.05));
        assertThat(judged.marginVolts()).isCloseTo(peak - 0.8 * beside, within(4 * LINES));
        assertThat(judged.worstAtDeg()).isCloseTo(10, within(1e-6)); // the second tooth
    }

    /**
     * An input pulled up to 5 V by 1 kohm, held at 2.9 V by 1.38 kohm to ground and driven with 1 V rms through 100 ohm: the
     * pin swings from 1.7 to 4.1 V, 0.3 V beyond 2.0 and 3.8 V.
     */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aPulledUpPinIsSwungAroundItsResistors(boolean corrected) {
        Rig rig = new Rig(new AudioOutput(Spread.exactly(Math.sqrt(2)), Spread.exactly(100), Optional.empty(), false, 0),
                new Divider(Spread.exactly(1e-3), Optional.of(Spread.exactly(1380)), new Coupling.Capacitor(Spread.exactly(1e-3))),
                new Lead(Spread.exactly(1e-3), 1e-12));
        Input input = new PulledUpInput(Spread.exactly(5), Spread.exactly(1000), 2.0, 3.8, FrontEnd.BARE);
        double around = 1 / (1 / 1000.0 + 1 / 1380.0);
        double swing = Math.sqrt(2) * around / (around + 100);
        Setup setup = Bench.setup(Bench.tone(Tone.Shape.SQUARE, 0.5, 0.999 * swing), rig, input).withCorrection(corrected);
        Decoding judged = Decoding.of(setup, 1000);
        double rest = 5 * 1380 / 2380.0;
        double margin = Math.min(2.0 - (rest - 0.999 * swing), rest + 0.999 * swing - 3.8);
        assertThat(margin).isCloseTo(0.3, within(0.05));
        assertThat(judged.verdict()).isEqualTo(DecodingVerdict.DECODED);
        // 1 mF on 680 ohm droops by half a millisecond of 0.68 s in a half period: 0.04 % of either swing
        assertThat(judged.marginVolts()).isCloseTo(margin, within(2 * swing * (0.0008 + LINES)));
    }

    @Test
    void withoutAResistorToGroundAPulledUpPinStaysHigh() {
        Rig rig = new Rig(new AudioOutput(Spread.exactly(Math.sqrt(2)), Spread.exactly(100), Optional.empty(), false, 0),
                new Divider(Spread.exactly(1e-3), Optional.empty(), new Coupling.Capacitor(Spread.exactly(1e-3))),
                new Lead(Spread.exactly(1e-3), 1e-12));
        Input input = new PulledUpInput(Spread.exactly(5), Spread.exactly(1000), 2.0, 3.8, FrontEnd.BARE);
        Decoding judged = Decoding.of(Bench.setup(Bench.tone(Tone.Shape.SQUARE, 0.5, 1.28), rig, input), 1000);
        assertThat(judged.verdict()).isEqualTo(DecodingVerdict.SILENT);
        assertThat(judged.marginVolts()).isCloseTo(2.0 - (5 - 1.28), within(2.56 * (0.0008 + LINES)));
        assertThat(judged.marginDb()).isCloseTo(20 * Math.log10(1.28 / 3), within(0.01));
    }
}
