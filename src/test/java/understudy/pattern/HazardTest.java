package understudy.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class HazardTest {

    @Test
    void eachHazardSaysWhatCanHappenAndWhatToDoInWholeSentences() {
        for (Hazard hazard : Hazard.values()) {
            assertThat(hazard.key()).matches("[a-z]+(-[a-z]+)*");
            assertThat(hazard.title()).isNotBlank().doesNotEndWith(".");
            assertThat(hazard.whatCanHappen()).endsWith(".");
            assertThat(hazard.whatToDo()).endsWith(".");
        }
        assertThat(Arrays.stream(Hazard.values()).map(Hazard::key)).doesNotHaveDuplicates();
    }

    @Test
    void patternsNameThreeAndTheOthersAreAlwaysShown() {
        assertThat(Hazard.named()).containsExactly(Hazard.CRANK, Hazard.WHEEL_SPEED, Hazard.ROAD_SPEED);
        assertThat(Hazard.general()).containsExactly(Hazard.AIRBAGS, Hazard.ELECTRIC_DRIVE, Hazard.ACTUATORS,
                Hazard.MAINS_COMPUTER, Hazard.PINS_UNDER_VOLTAGE, Hazard.CURRENTS, Hazard.RULES);
    }

    @Test
    void theGeneralOnesSayWhatMustNeverBeLeftOut() {
        String all = Hazard.general().stream().map(h -> h.whatCanHappen() + " " + h.whatToDo()).collect(Collectors.joining(" "));
        assertThat(all).contains("no more than 1 mA", "no more than 5 mA", "any single fault",
                "must not be connected to ignition or actuator circuits", "Local codes", "licensed practice", "come first",
                "orange cabling", "isolation transformer", "Measure the pin before each time you clip on");
    }
}
