package understudy.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import understudy.refusal.Refused;

/** Readings are made from a known circuit by the voltage-divider rule; the circuit must be found again. */
class UnknownInputTest {
    private static final Meter PERFECT = new Meter(1e9, 0, 0);

    private static double read(double volts, double ohms, double load, double meterOhms) {
        double both = 1 / (1 / load + 1 / meterOhms);
        return volts * both / (both + ohms);
    }

    @Test
    void plainFormulaWithAPerfectMeter() {
        UnknownInput found = UnknownInput.from(5, Spread.exactly(1000), 2.5, PERFECT);
        assertThat(found.ohms()).isCloseTo(1000, within(0.01)); // R (5/2.5 - 1), the meter's 1e9 ohm aside
        assertThat(found.kinds()).contains(InputKind.PULLED_UP_5_V);
    }

    @Test
    void meterThatLoadsThePinIsReckonedWith() {
        double[] circuits = {1e3, 10e3, 100e3, 470e3};
        for (double ohms : circuits) {
            Meter meter = new Meter(1e6, 0, 0);
            UnknownInput found = UnknownInput.from(read(5, ohms, 1e15, 1e6), Spread.exactly(10e3),
                    read(5, ohms, 10e3, 1e6), meter);
            assertThat(found.ohms() / ohms).isCloseTo(1, within(1e-6));
            assertThat(found.openVolts()).isCloseTo(5, within(1e-6));
        }
    }

    @Test
    void truthLiesWithinWhatTheErrorsAllowWhateverTheyAre() {
        Random random = new Random(42);
        for (int i = 0; i < 2000; i++) {
            double volts = 1.2 + 10 * random.nextDouble();
            double ohms = 1000 * Math.pow(100, random.nextDouble());
            Meter meter = new Meter(10e6, 0.008, 0.02);
            Spread known = new Spread(1000 * Math.pow(50, random.nextDouble()), 0.05);
            double open = read(volts, ohms, 1e15, 10e6);
            double loaded = read(volts, ohms, known.at(2 * random.nextDouble() - 1), 10e6);
            // the reading is off by at most what the meter promises of its reading
            double readOpen = open + 0.98 * meter.offVolts(open) * (2 * random.nextDouble() - 1);
            double readLoaded = loaded + 0.98 * meter.offVolts(loaded) * (2 * random.nextDouble() - 1);
            UnknownInput found = UnknownInput.from(readOpen, known, readLoaded, meter);
            assertThat(ohms).isBetween(found.leastOhms(), found.mostOhms());
            assertThat(volts).isBetween(found.leastOpenVolts(), found.mostOpenVolts());
        }
    }

    @Test
    void kindsFollowVoltsAndOhms() {
        assertThat(UnknownInput.from(2.5, new Spread(100e3, 0.01), 1.25, Meter.USUAL).kinds())
                .containsExactly(InputKind.RELUCTOR_BIASED_PAIR, InputKind.RELUCTOR_ADAPTIVE_PAIR);
        UnknownInput twelve = UnknownInput.from(11.8, new Spread(2200, 0.01), 7.5, Meter.USUAL);
        assertThat(twelve.kinds()).containsExactly(InputKind.PULLED_UP_8_TO_12_V, InputKind.TWO_WIRE_CURRENT);
        assertThat(twelve.kinds()).allMatch(InputKind::isOutOfReach);
        UnknownInput feed = UnknownInput.from(12.6, new Spread(1000, 0.01), 12.6, new Meter(10e6, 0.005, 0.01));
        assertThat(feed.kinds()).isEmpty();
        assertThat(feed.advice()).anyMatch(sentence -> sentence.startsWith("Stop: this is a supply"));
        assertThat(UnknownInput.from(0.01, new Spread(1000, 0.01), 0, Meter.USUAL).kinds())
                .contains(InputKind.RELUCTOR_HYSTERESIS);
    }

    @Test
    void readingsThatCannotBeAreRefused() {
        assertThatThrownBy(() -> UnknownInput.from(2, new Spread(1000, 0.01), 4, Meter.USUAL))
                .isInstanceOf(Refused.class)
                .hasMessage("the reading rises from 2 V to 4 V with a resistor to ground; swap the two readings, or "
                        + "measure again: something else moves the voltage");
        assertThatThrownBy(() -> UnknownInput.from(-2, new Spread(1000, 0.01), 4, Meter.USUAL))
                .hasMessage("the reading without the resistor is given as -2 V; allowed are 0 V to 60 V");
        assertThatThrownBy(() -> UnknownInput.from(5, new Spread(-1000, 0.01), 4, Meter.USUAL))
                .hasMessage("the known resistor is given as -1 kohm; allowed are 1 kohm to 10 Mohm");
        assertThatThrownBy(() -> UnknownInput.from(Double.NaN, new Spread(1000, 0.01), 4, Meter.USUAL))
                .hasMessageContaining("NaN V");
    }
}
