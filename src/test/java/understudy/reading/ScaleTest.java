package understudy.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.refusal.Refused;

/** Numbers of the trade, worked out by hand. */
class ScaleTest {

    /** Half of the last digit that is given. */
    private static final double LAST_OF_THREE = 0.0005;

    @Test
    void tyresByTheirSize() {
        TyreSize small = TyreSize.parse("205/55R16");
        // 16 x 25.4 = 406.4, and 2 x 205 x 0.55 = 225.5
        assertThat(small.outsideDiameterMetres()).isCloseTo(0.6319, within(1e-12));
        assertThat(small.rollsMetres()).isCloseTo(1.927, within(LAST_OF_THREE));
        assertThat(TyreSize.parse("265/70R17").rollsMetres()).isCloseTo(2.449, within(LAST_OF_THREE));
    }

    @ParameterizedTest
    @CsvSource({"205/55 R16 91V", "P205/55R16", "205/55ZR16", " 205 / 55 r 16 "})
    void tyresAsTheyAreWritten(String written) {
        assertThat(TyreSize.parse(written)).hasToString("205/55R16");
    }

    @ParameterizedTest
    @CsvSource({"205-55-16", "205/55", "55R16", "5/55R16", "205/55R99", "205/5R16", "505/55R16", "''"})
    void whatIsNoTyre(String written) {
        assertThatThrownBy(() -> TyreSize.parse(written)).isInstanceOf(Refused.class);
    }

    @Test
    void halfInchRims() {
        assertThat(TyreSize.parse("225/70R19.5")).isEqualTo(new TyreSize(225, 70, 19.5)).hasToString("225/70R19.5");
    }

    @Test
    void wheelSpeed() {
        // f = v/3.6/C N: 100/3.6/1.9273 x 48 = 691.8, told as 692 Hz
        Scale ring = new Scale.Rolling(48, 1, TyreSize.parse("205/55R16").rollsMetres());
        assertThat(ring.frequencyHz(100)).isCloseTo(692, within(0.5));
        assertThat(ring.base(692)).isCloseTo(100, within(0.1));
    }

    @Test
    void vehicleSpeedByPulses() {
        double kmPerMile = 1.609344;
        Scale perMile = Scale.PulsesPerKm.ofMile(4000);
        // 1 mph is 4000 pulses in 3600 s
        assertThat(perMile.frequencyHz(kmPerMile)).isCloseTo(1.111, within(LAST_OF_THREE));
        assertThat(perMile.frequencyHz(1)).isCloseTo(0.690, within(LAST_OF_THREE));
        // 637 turns a minute of 4 pulses at 60 km/h, which is 1 km in that minute
        assertThat(new Scale.PulsesPerKm(637 * 4).frequencyHz(1)).isCloseTo(0.708, within(LAST_OF_THREE));
    }

    @Test
    void vehicleSpeedByTheOutputShaft() {
        // 60 km/h is 16.667 m/s: 8.648 turns of 1.9273 m, times 4.1 is 35.456 turns of the shaft, times 17 teeth
        Scale shaft = new Scale.Rolling(17, 4.1, TyreSize.parse("205/55R16").rollsMetres());
        assertThat(shaft.frequencyHz(60)).isCloseTo(602.7, within(0.1));
    }

    @Test
    void engineSpeed() {
        assertThat(new Scale.EventsPerTurn(36).base(360)).isCloseTo(600, within(1e-9));
        // a four-stroke engine of 4 fires twice a turn: 600 rpm is 10 turns, 20 events a second
        assertThat(Scale.EventsPerTurn.ofCylinders(4).base(20)).isCloseTo(600, within(1e-9));
    }

    @Test
    void tablesRunStraightBetweenTheirPointsAndEndThere() {
        Scale table = new Scale.Points(List.of(new Scale.Points.Point(80, 0), new Scale.Points.Point(100, 20),
                new Scale.Points.Point(159, 101)));
        assertThat(table.base(90)).isEqualTo(10);
        assertThat(table.base(100)).isEqualTo(20);
        assertThat(table.base(159)).isEqualTo(101);
        assertThat(table.base(79.9)).isNaN();
        assertThat(table.base(159.1)).isNaN();
        assertThat(table.frequencyHz(10)).isEqualTo(90);
        assertThat(table.frequencyHz(-0.1)).isNaN();
    }

    @Test
    void aTableThatTurnsRoundIsNone() {
        assertThatThrownBy(() -> new Scale.Points(List.of(new Scale.Points.Point(80, 0), new Scale.Points.Point(100, 20),
                new Scale.Points.Point(159, 20)))).isInstanceOf(IllegalArgumentException.class);
    }

    /** Both ways there are a handful of multiplications, each rounding by 1.1e-16 of its result; a fall is scaled by its slope. */
    @Property
    void everyScaleReadsBackwards(@ForAll @DoubleRange(min = 0.1, max = 5000) double hz) {
        List<Scale> scales = List.of(new Scale.Rolling(44, 1, 1.927), new Scale.PulsesPerKm(2548), new Scale.EventsPerTurn(1.5),
                new Scale.Line(0.16, -0.4), new Scale.Line(-2, 70),
                new Scale.Points(List.of(new Scale.Points.Point(0, 101), new Scale.Points.Point(700, 40), new Scale.Points.Point(5000, 3))));
        assertThat(scales).allSatisfy(scale ->
                assertThat(scale.frequencyHz(scale.base(hz))).isCloseTo(hz, within(1e-9 * 5000)));
    }
}
