package understudy.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.motion.Motion;
import understudy.pattern.Profile;
import understudy.pattern.Speed;
import understudy.pattern.SpeedUnit;
import understudy.refusal.Refusals;
import understudy.refusal.Refused;

class SweepStopsTest {

    /** A wheel that rolls 2 m a turn: 72 km/h are 20 m/s, 10 turns a second. */
    private static final Speed ROAD = new Speed(SpeedUnit.KMH, 2, 10, 1, 100);
    private static final Speed CRANK = new Speed(SpeedUnit.RPM, Double.NaN, 10, 1, 100);

    private static double[] list(Speed speed, String written) {
        Refusals given = new Refusals();
        List<SweepStop> steps = new SweepStops(speed, given).list(written, 2, 3);
        given.refuse();
        assertThat(steps).allSatisfy(step -> {
            assertThat(step.dwellSeconds()).isEqualTo(3);
            assertThat(step.way()).isEqualTo(List.of(new Profile.Ramp(Double.NaN, step.speedHz(), 2)));
        });
        return steps.stream().mapToDouble(SweepStop::speedHz).toArray();
    }

    private static List<SweepStop> profile(String written) {
        Refusals given = new Refusals();
        List<SweepStop> steps = new SweepStops(CRANK, given).profile(written);
        given.refuse();
        return steps;
    }

    @Test
    void aNumberAloneTakesTheUnitOfTheNextThatHasOne() {
        assertThat(list(CRANK, "600 rpm, 1200 rpm")).containsExactly(10, 20);
        assertThat(list(CRANK, "600, 1200 rpm; 30, 40 Hz")).containsExactly(10, 20, 30, 40);
        // 36, 72 and 108 km/h at 2 m a turn; binary fractions of 1/3.6 are off in the last bit
        assertThat(list(ROAD, "36, 72, 108 km/h")).usingComparatorWithPrecision(1e-12).containsExactly(5, 10, 15);
    }

    @Test
    void spansGoUpAndDownAndKeepTheirEnd() {
        assertThat(list(CRANK, "600 to 1500 by 300 rpm")).usingComparatorWithPrecision(1e-12).containsExactly(10, 15, 20, 25);
        assertThat(list(CRANK, "1500 rpm to 600 rpm by 5 Hz, 60 rpm")).usingComparatorWithPrecision(1e-12).containsExactly(25, 20, 15, 10, 1);
        assertThat(list(CRANK, "600 to 700 by 30 rpm")).as("the last step would go beyond").hasSize(4);
        // 0.1 is no binary fraction: fifty of them may miss 5 by a rounding error
        assertThat(list(CRANK, "1 to 6 by 0.1 Hz")).hasSize(51);
        assertThat(list(CRANK, "6000 rpm to 6000 rpm by 1 rpm")).containsExactly(100);
    }

    @Test
    void theWayBackDoesNotRepeatTheTop() {
        Refusals given = new Refusals();
        List<SweepStop> up = new SweepStops(CRANK, given).list("10, 20, 30 Hz", 1, 1);
        assertThat(SweepStops.andBack(up, 1).stream().mapToDouble(SweepStop::speedHz)).containsExactly(10.0, 20.0, 30.0, 20.0, 10.0);
    }

    @Test
    void aProfileIsReadWhereItHolds() {
        List<SweepStop> steps = profile("hold: 600 rpm, for: 2 s; ramp: 1200 rpm, for: 3 s; hold: 1200 rpm, for: 4 s;"
                + " ramp: 2400 rpm, from: 1800 rpm, for: 1 s; sweep: 3000 rpm, for: 5 s; hold: 3000 rpm, for: 1 s; ramp: 60 rpm, for: 1 s");
        double stays = Double.NaN;
        double quick = Motion.HAND_RAMP_SECONDS; // what has no time of its own is as quick as the hand
        assertThat(steps).containsExactly(
                new SweepStop(10, List.of(new Profile.Ramp(stays, 10, quick)), 2),
                new SweepStop(20, List.of(new Profile.Ramp(stays, 20, 3), new Profile.Ramp(stays, 20, quick)), 4),
                new SweepStop(50, List.of(new Profile.Ramp(30, 40, 1), new Profile.Sweep(stays, 50, 5),
                        new Profile.Ramp(stays, 50, quick)), 1));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "600 kg, 1200|speeds: the unit \"kg\" is not known",
        "39,5 km/h|speeds: \"39,5\" can be one number or several; write a number with a point, like 39.5, and a blank between two, like 39, 5",
        "600, 700,800 rpm|speeds: \"700,800\" can be one number or several; write a number with a point, like 700.800,",
        "fast|speeds: \"fast\" is not",
        "7000 rpm|speeds: the speed 7000 rpm is out of this pattern's range; allowed are 60 rpm to 6000 rpm",
        "600 to 1200 by 0 rpm|speeds: \"600 rpm to 1200 rpm by 0 rpm\" makes too many speeds; at most 200 can be stepped through",
        "600 to 6000 by 1 rpm|speeds: \"600 rpm to 6000 rpm by 1 rpm\" makes too many speeds; at most 200",
        ", ,|speeds: there are no speeds in \", ,\"; write speeds like",
        "600 to 1200 rpm|speeds: \"600 to 1200 rpm\" does not say how far apart; write it like",
    })
    void badListsAreRefused(String written, String problem) {
        assertThatThrownBy(() -> list(CRANK, written)).isInstanceOfSatisfying(Refused.class,
                bad -> assertThat(bad.refusals().get(0).toString()).startsWith(problem));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "ramp: 600 rpm, for: 2 s|profile: it holds no speed, and the display is read where it holds; add steps",
        "hold: 600 rpm, for: 2 s; follow|profile: the display is read where it holds a speed, so it can't crank",
        "crank: 180 rpm, for: 3 s, cylinders: 4, ripple: 25 %|profile: the display is read where it holds",
    })
    void profilesThatCantBeReadAtAreRefused(String written, String problem) {
        assertThatThrownBy(() -> profile(written)).isInstanceOfSatisfying(Refused.class,
                bad -> assertThat(bad.refusals().get(0).toString()).startsWith(problem));
    }

    @Test
    void repeatsCountAsOftenAsTheyCome(@TempDir Path folder) throws Exception {
        String file = Files.writeString(folder.resolve("profile.yaml"), """
                - repeat: 3
                  steps:
                    - {hold: 600 rpm, for: 1 s}
                    - {hold: 1200 rpm, for: 1 s}
                """).toString();
        assertThat(profile(file).stream().mapToDouble(SweepStop::speedHz)).containsExactly(10.0, 20.0, 10.0, 20.0, 10.0, 20.0);
        String many = Files.writeString(folder.resolve("many.yaml"), "- {repeat: 101, steps: [{hold: 600 rpm, for: 1 s}, {hold: 900 rpm, for: 1 s}]}\n").toString();
        assertThatThrownBy(() -> profile(many)).hasMessageContaining("profile: these are 202 speeds; at most 200");
    }
}
