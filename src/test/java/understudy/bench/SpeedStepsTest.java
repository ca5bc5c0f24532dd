package understudy.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import understudy.pattern.Speed;
import understudy.pattern.SpeedUnit;

class SpeedStepsTest {

    private static final Speed CRANK = new Speed(SpeedUnit.RPM, Double.NaN, 800 / 60.0, 30 / 60.0, 8000 / 60.0);
    private final SpeedSteps steps = new SpeedSteps(CRANK);

    @Example
    void stepsAreRoundNumbersAboutAnEighthApart() {
        assertThat(upFromRpm(800, 5, false)).containsExactly(900, 1000, 1100, 1200, 1300);
        assertThat(upFromRpm(1600, 2, false)).containsExactly(1800, 2000);
        assertThat(upFromRpm(200, 3, false)).containsExactly(220, 240, 260);
        assertThat(upFromRpm(800, 3, true)).containsExactly(810, 820, 830);
        assertThat(upFromRpm(203.4, 2, true)).containsExactly(204, 206);
    }

    @Example
    void stopsAtTheEndsOfThePatternsRange() {
        assertThat(steps.faster(CRANK.toHz(), false)).isEqualTo(CRANK.toHz());
        assertThat(steps.slower(CRANK.fromHz(), false)).isEqualTo(CRANK.fromHz());
        assertThat(steps.faster(rpm(7900), false)).isEqualTo(CRANK.toHz());
    }

    @Example
    void leavesAStandstill() {
        Speed road = new Speed(SpeedUnit.KMH, 2, 10, 0, 250 / 3.6 / 2);
        SpeedSteps roadSteps = new SpeedSteps(road);
        // a ten-thousandth of 250 km/h is 0.025, of which 0.02 is the round number
        assertThat(road.inUnit(roadSteps.faster(0, false))).isCloseTo(0.02, within(1e-12));
        assertThat(roadSteps.slower(0, false)).isZero();
    }

    @Property
    void aStepUpAndAStepDownFromARoundSpeedEndWhereTheyBegan(@ForAll @DoubleRange(min = 40, max = 7000) double rpm) {
        double round = steps.faster(rpm(rpm), false);
        double back = steps.slower(steps.faster(round, false), false);
        // a handful of roundings of numbers below 8000 / 60
        assertThat(back).isCloseTo(round, within(1e-11));
    }

    private static double rpm(double value) {
        return CRANK.hz(value);
    }

    private long[] upFromRpm(double rpm, int count, boolean fine) {
        long[] seen = new long[count];
        double hz = rpm(rpm);
        for (int i = 0; i < count; i++) {
            hz = steps.faster(hz, fine);
            seen[i] = Math.round(CRANK.inUnit(hz));
            assertThat(CRANK.inUnit(hz)).isCloseTo(seen[i], within(1e-9));
        }
        return seen;
    }
}
