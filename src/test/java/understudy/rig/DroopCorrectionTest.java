package understudy.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DroopCorrectionTest {
    private static final int RATE_HZ = 48_000;
    private static final double OHMS = 100 + 4900 + 0.2 + 10_000;
    /** A corner of 20 Hz. */
    private static final double FARADS = AudioOutput.couplingFarads(20, OHMS);
    private static final double GAIN = 10_000 / OHMS;

    private static Connection connection(double fullScaleVolts, boolean inverted) {
        Rig rig = new Rig(new AudioOutput(Spread.exactly(fullScaleVolts), Spread.exactly(100),
                Optional.of(Spread.exactly(FARADS)), inverted, 0),
                new Divider(Spread.exactly(4900), Optional.empty(), new Coupling.Direct()),
                new Lead(Spread.exactly(0.1), 1e-12));
        return new Connection(rig, new ResistiveInput(Spread.exactly(10_000), 0.1, FrontEnd.BARE));
    }

    /** Teeth of a 36-1 wheel at 200 rpm, 0.2 V either way, with edges of three samples, without their mean. */
    private static double[] wheel() {
        int turn = RATE_HZ * 60 / 200;
        double[] volts = new double[2 * turn];
        double mean = (35.0 / 72 * 2 - 1) * 0.2;
        for (int i = 0; i < volts.length; i++) {
            double place = 36.0 * (i % turn) / turn;
            double inTooth = place - Math.floor(place);
            double samples = Math.min(inTooth, 0.5 - inTooth) * turn / 36 + 0.5;
            double level = place >= 35 ? 0 : Math.max(0, Math.min(1, samples / 3));
            volts[i] = 0.4 * level - 0.2 - mean;
        }
        return volts;
    }

    @Test
    void teethArriveWithoutTilt() {
        double[] wanted = wheel();
        for (boolean inverted : new boolean[] {false, true}) {
            Connection connection = connection(1.4, inverted);
            DroopCorrection correction = connection.droopCorrection(1.0 / RATE_HZ);
            Transient plain = connection.fromRest(1.0 / RATE_HZ);
            Transient corrected = connection.fromRest(1.0 / RATE_HZ);
            double worst = 0;
            double worstPlain = 0;
            for (int i = 0; i < wanted.length; i++) {
                double fraction = correction.next(wanted[i]);
                double without = wanted[i] / (1.4 * GAIN) * (inverted ? -1 : 1);
                if (i == 0) {
                    corrected.jumpTo(fraction);
                    plain.jumpTo(without);
                } else {
                    corrected.stepTo(fraction);
                    plain.stepTo(without);
                }
                if (i > 0) { // at the jump itself the lead has not charged
                    worst = Math.max(worst, Math.abs(corrected.volts(Probe.PINS) - wanted[i]));
                    worstPlain = Math.max(worstPlain, Math.abs(plain.volts(Probe.PINS) - wanted[i]));
                }
            }
            assertThat(correction.clippedFrames()).isZero();
            // exact but for the lead's 1e-12 F, which lags by 3 ns the edges' 0.13 V a sample of 21 us: 2e-5 V
            assertThat(worst).isLessThan(4e-5);
            assertThat(worstPlain).isGreaterThan(0.04); // a tenth of the swing: else the test would show nothing
        }
    }

    /** Through a transformer and the output's capacitor, which together have a corner of some 21 Hz, whatever the ratio. */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5, 1, 2, 5})
    void teethArriveWithoutTiltThroughATransformer(double ratio) {
        Coupling turns = new Coupling.Transformer(Spread.exactly(ratio), Spread.exactly(6), Spread.exactly(90),
                Spread.exactly(95 * ratio * ratio), 1);
        double loadOhms = 10_000 * ratio * ratio; // the same, seen from the primary
        Rig rig = new Rig(new AudioOutput(Spread.exactly(60), Spread.exactly(100), Optional.of(Spread.exactly(10e-6)), false, 0),
                new Divider(Spread.exactly(1000), Optional.empty(), turns), new Lead(Spread.exactly(0.1), 1e-12));
        Connection connection = new Connection(rig, new ResistiveInput(Spread.exactly(loadOhms), 0.1, FrontEnd.BARE));
        // 1.19 kohm and 10 uF in series, 6 H beside 10.095 kohm: with s = jw, load over all of it, by hand
        double w = 2 * Math.PI * connection.lowCornerHz(Probe.PINS, 1e5).orElseThrow();
        double gain = w * w * 6 * 10e-6 * 10_095 / Math.hypot(10_095 - w * w * 6 * 10e-6 * (1190 + 10_095),
                w * (6 + 10e-6 * 1190 * 10_095));
        assertThat(gain / (10_095.0 / (1190 + 10_095))).isCloseTo(Math.sqrt(0.5), within(1e-3));
        assertThat(w / (2 * Math.PI)).isBetween(20.0, 22.0);
        double[] wanted = wheel();
        DroopCorrection correction = connection.droopCorrection(1.0 / RATE_HZ);
        Transient time = connection.fromRest(1.0 / RATE_HZ);
        double worst = 0;
        for (int i = 0; i < wanted.length; i++) {
            double fraction = correction.next(wanted[i] * ratio);
            if (i == 0) {
                time.jumpTo(fraction);
            } else {
                time.stepTo(fraction);
                worst = Math.max(worst, Math.abs(time.volts(Probe.PINS) - wanted[i] * ratio));
            }
        }
        assertThat(correction.clippedFrames()).isZero();
        // the lead's 1e-12 F lag by 1.1 kohm ratio^2 times that, 25 ns at most, edges of 0.13 V a sample of 21 us
        assertThat(worst / ratio).isLessThan(2 * 0.13 * 25e-9 / 21e-6);
    }

    @Test
    void whatIsPlayedIsTheSignalAndItsIntegralOverTheTimeConstant() {
        double tau = FARADS * OHMS;
        DroopCorrection correction = connection(1.4, false).droopCorrection(1.0 / RATE_HZ);
        for (int i = 0; i < 4800; i++) {
            double time = (double) i / RATE_HZ;
            double wanted = 0.1 * Math.sin(2 * Math.PI * 30 * time);
            double integral = 0.1 * (1 - Math.cos(2 * Math.PI * 30 * time)) / (2 * Math.PI * 30);
            // inverse of a first-order high-pass; straight lines between samples differ from the sine by
            // (2 pi 30/48000)^2/12 of it, 1e-6
            assertThat(correction.next(wanted) * 1.4 * GAIN).isCloseTo(wanted + integral / tau, within(1e-6));
        }
    }

    @Test
    void beyondFullScaleItStaysThereAndFindsItsWayBack() {
        Connection connection = connection(0.25, false);
        DroopCorrection correction = connection.droopCorrection(1.0 / RATE_HZ);
        Transient time = connection.fromRest(1.0 / RATE_HZ);
        long clipped = 0;
        for (int i = 0; i < 4800; i++) {
            double wanted = i < 1200 ? 0.1 : i < 2400 ? -0.1 : 0;
            double fraction = correction.next(wanted);
            assertThat(Math.abs(fraction)).isLessThanOrEqualTo(1);
            if (i == 0) {
                time.jumpTo(fraction);
            } else {
                time.stepTo(fraction);
            }
            if (correction.clippedFrames() == clipped && i > 0) {
                // unclipped samples are exact again, but for the lead behind a jump of 0.2 V: 3 ns of 21 us
                assertThat(time.volts(Probe.PINS)).isCloseTo(wanted, within(5e-5));
            }
            clipped = correction.clippedFrames();
        }
        assertThat(clipped).isBetween(100L, 4000L);
    }
}
