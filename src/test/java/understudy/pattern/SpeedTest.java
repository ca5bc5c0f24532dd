package understudy.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SpeedTest {
    private static final Speed CRANK = new Speed(SpeedUnit.RPM, Double.NaN, 800 / 60.0, 20 / 60.0, 8000 / 60.0);
    /** A wheel that rolls 1.927 m, 1 to 250 km/h. */
    private static final Speed ROAD = new Speed(SpeedUnit.KMH, 1.927, 50 / 3.6 / 1.927, 1 / 3.6 / 1.927, 250 / 3.6 / 1.927);

    @Test
    void speedsBecomeTurnsPerSecond() {
        assertThat(CRANK.parseHz("60 rpm")).isEqualTo(1);
        assertThat(CRANK.parseHz(" 100Hz ")).isEqualTo(100);
        assertThat(CRANK.parseHz("0.1 kHz")).isEqualTo(100);
        // The circumference covered once a second; four roundings of 1.1e-16 each.
        assertThat(ROAD.parseHz("6.9372 km/h")).isCloseTo(1, within(5e-16));
        // 30 mph are 30 * 1609.344/3600 = 13.4112 m/s.
        assertThat(ROAD.parseHz("30 mph")).isCloseTo(13.4112 / 1.927, within(5e-15));
        assertThat(ROAD.parseHz("600 rpm")).isEqualTo(10);
    }

    /** 205/55R16 of 48 teeth at 100 km/h gives 692 Hz, by the trade's own table (which rounds to 1 Hz, so within 0.5). */
    @Test
    void roadSpeedAgreesWithTheTradesTable() {
        assertThat(ROAD.parseHz("100 km/h") * 48).isCloseTo(692, within(0.5));
    }

    @Test
    void theEndsOfTheRangeAreAllowed() {
        assertThat(CRANK.parseHz("20 rpm")).isEqualTo(CRANK.fromHz());
        assertThat(CRANK.parseHz("8000 rpm")).isEqualTo(CRANK.toHz());
    }

    @Test
    void messagesNameTheRangeInThePatternsUnit() {
        assertThatThrownBy(() -> CRANK.parseHz("9000 rpm"))
                .hasMessage("the speed 9000 rpm is out of this pattern's range; allowed are 20 rpm to 8000 rpm");
        assertThatThrownBy(() -> CRANK.parseHz("200 Hz"))
                .hasMessage("the speed 200 Hz is out of this pattern's range; allowed are 20 rpm to 8000 rpm");
        assertThatThrownBy(() -> ROAD.parseHz("-1 km/h"))
                .hasMessage("the speed -1 km/h is out of this pattern's range; allowed are 1 km/h to 250 km/h");
        assertThatThrownBy(() -> CRANK.parseHz("50 km/h"))
                .hasMessage("\"50 km/h\" is a road speed; write a turning speed or a frequency like 800 rpm (units: rpm, Hz)");
        assertThatThrownBy(() -> CRANK.parseHz("800")).hasMessageStartingWith("\"800\" has no unit;");
    }

    @Test
    void printsInThePatternsUnit() {
        assertThat(CRANK.print(800 / 60.0)).isEqualTo("800 rpm");
        assertThat(ROAD.print(ROAD.defaultHz())).isEqualTo("50 km/h");
        assertThat(CRANK.print(CRANK.fromHz())).isEqualTo("20 rpm");
    }
}
