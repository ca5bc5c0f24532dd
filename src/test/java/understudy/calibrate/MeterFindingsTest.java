package understudy.calibrate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import understudy.calibrate.MeterFindings.Loaded;
import understudy.rig.Meter;
import understudy.rig.Spread;
import understudy.refusal.Refused;

/** Readings made by the divider rule from an output that is known, and what is concluded from them. */
class MeterFindingsTest {

    private static final Meter EXACT = new Meter(10e6, 0, 0);

    /** What a meter shows: the source's share across whatever hangs on it. */
    private static double shown(double sourceVoltsRms, double outputOhms, double hungOhms) {
        return sourceVoltsRms * hungOhms / (outputOhms + hungOhms);
    }

    private static double beside(double a, double b) {
        return a * b / (a + b);
    }

    @Property(tries = 200)
    void anExactMeterTellsTheOutputExactly(@ForAll @DoubleRange(min = 0.4, max = 4) double fullScaleVolts,
            @ForAll @DoubleRange(min = 1, max = 1000) double outputOhms,
            @ForAll @DoubleRange(min = 100, max = 10_000) double loadOhms, @ForAll @DoubleRange(min = 0.1, max = 1) double level) {
        double source = fullScaleVolts * level / Math.sqrt(2);
        double open = shown(source, outputOhms, 10e6);
        double loaded = shown(source, outputOhms, beside(loadOhms, 10e6));
        MeterFindings found = MeterFindings.of(EXACT, level, open, Optional.of(new Loaded(Spread.exactly(loadOhms), loaded)));
        assertThat(found.fullScaleVolts().nominal()).isCloseTo(fullScaleVolts, within(1e-9 * fullScaleVolts));
        assertThat(found.outputOhms().orElseThrow().nominal()).isCloseTo(outputOhms, within(1e-6 * outputOhms));
    }

    /** Whatever the meter and the load are off by, within what is declared, the truth lies within what is told. */
    @Property(tries = 500)
    void theTruthLiesWithinTheTolerance(@ForAll @DoubleRange(min = -1, max = 1) double share,
            @ForAll @DoubleRange(min = -1, max = 1) double firstDigits, @ForAll @DoubleRange(min = -1, max = 1) double lastDigits,
            @ForAll @DoubleRange(min = -1, max = 1) double load, @ForAll @DoubleRange(min = 1, max = 1000) double outputOhms) {
        Meter meter = new Meter(10e6, 0.01, 0.002);
        double source = 0.7;
        double open = shown(source, outputOhms, 10e6) * (1 + 0.0099 * share) + 0.002 * firstDigits;
        double loaded = shown(source, outputOhms, beside(1000 * (1 + 0.05 * load), 10e6)) * (1 + 0.0099 * share) + 0.002 * lastDigits;
        MeterFindings found;
        try {
            found = MeterFindings.of(meter, 0.7, open, Optional.of(new Loaded(new Spread(1000, 0.05), loaded)));
        } catch (Refused e) {
            // only where the digits outweigh what the output loses: 2 x 2 mV of 0.7 V is 6 ohm of 1 kohm
            assertThat(outputOhms).isLessThan(7);
            return;
        }
        Spread ohms = found.outputOhms().orElseThrow();
        // the unloading of an exact meter is one part in 10 000 at most; it is in both readings alike
        assertThat(outputOhms).isLessThanOrEqualTo(ohms.nominal() * (1 + ohms.tolerance()) * 1.0001);
        if (!found.leastToTell()) {
            assertThat(outputOhms).isGreaterThanOrEqualTo(ohms.nominal() * (1 - ohms.tolerance()) * 0.9999);
        }
        Spread full = found.fullScaleVolts();
        double truth = source * Math.sqrt(2) / 0.7;
        // the tolerance is taken of what is read; of the truth it is a hundredth of itself less
        assertThat(Math.abs(truth - full.nominal())).isLessThanOrEqualTo(full.nominal() * full.tolerance() * 1.02);
    }

    @Example
    void oneReadingTellsVoltsOnly() {
        MeterFindings found = MeterFindings.of(new Meter(10e6, 0.01, 0.003), 0.5, 0.5, Optional.empty());
        // 0.5 V rms at half scale: 1.414 V peak; 1 % and 3 mV of 500, and 1 kohm at most beside 10 Mohm
        assertThat(found.fullScaleVolts().nominal()).isCloseTo(Math.sqrt(2), within(1e-12));
        assertThat(found.fullScaleVolts().tolerance()).isCloseTo(0.0161, within(1e-12));
        assertThat(found.outputOhms()).isEmpty();
    }

    @Example
    void readingsThatCantBeTrue() {
        Meter meter = new Meter(10e6, 0.01, 0.003);
        Spread load = new Spread(1000, 0.01);
        assertThatThrownBy(() -> MeterFindings.of(meter, 0.5, 0.002, Optional.empty()))
                .isInstanceOf(Refused.class).hasMessageContaining("the meter shows 2 mV, too little");
        assertThatThrownBy(() -> MeterFindings.of(meter, 0.5, 0.5, Optional.of(new Loaded(load, 0.6))))
                .isInstanceOf(Refused.class).hasMessageContaining("a load can't raise it");
        assertThatThrownBy(() -> MeterFindings.of(meter, 0.5, 0.5, Optional.of(new Loaded(load, 0))))
                .isInstanceOf(Refused.class).hasMessageContaining("is the output shorted");
        assertThatThrownBy(() -> MeterFindings.of(meter, 0.5, 0.5, Optional.of(new Loaded(load, 0.04))))
                .isInstanceOf(Refused.class).hasMessageContaining("11.5 kohm, more than any audio output");
    }
}
