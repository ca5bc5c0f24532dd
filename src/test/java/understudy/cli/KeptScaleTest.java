package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import understudy.store.LearnedScale;
import understudy.store.Store;

class KeptScaleTest extends SweepBench {

    @Test
    void aScaleIsKeptForTheVehicleAndOfferedNextTime() {
        // a display of 0.25 km/h for each Hz, half of what is declared: 10, 20, 30 at 40, 80, 120 Hz
        String first = fine("10\n20\n30\nyes\n", sweep("--speeds", "600, 1200, 1800 rpm", "--vehicle", "Fieldhand 4, bench 2"));
        assertThat(first).contains("Keep this scale only if you know that the module is good")
                .contains("Keep this scale for vehicle \"Fieldhand 4, bench 2\"? yes or no: yes\nKept. Next time add --learned.\n");
        try (Store store = Run.in(home).store()) {
            LearnedScale kept = store.learnedScales().forVehicle("Fieldhand 4, bench 2", "wheel").get(0);
            assertThat(kept.perHz().hold(0.25)).isTrue();
            assertThat(kept.origin()).isEqualTo("sweep of wheel");
        }
        String[] plain = {"sweep", wheel, "--speeds", "600, 1200 rpm", "--to", "silent", "--ramp", "0 s", "--dwell", "0 s",
            "--vehicle", "fieldhand 4, BENCH 2"};
        assertThat(fine("", plain)).contains("For this vehicle a scale is kept: learned on vehicle").contains("Add --learned")
                .contains("expected: 600 rpm");
        String[] learned = Stream.concat(Arrays.stream(plain), Stream.of("--learned")).toArray(String[]::new);
        assertThat(fine("10\n", learned)).contains("expected: 10 km/h").contains("Expected by what was learned on vehicle");
    }

    @Test
    void aScaleIsKeptOnlyAfterAYesAndForSomeVehicle() {
        String[] args = sweep("--speeds", "600, 1200, 1800 rpm");
        assertThat(fine("20\n40\n60\n\n", args)).contains("Keep this scale? Type which vehicle it is, or Enter for no: \nNot kept.\n")
                .doesNotContain("Keep this scale only");
        assertThat(fine("20\n40\n60\n", args)).contains("The scale was not kept.");
        assertThat(fine("20\n40\n60\nFieldhand 4\n", args)).contains("Kept. Next time add --learned --vehicle \"Fieldhand 4\".");
        assertThat(fine("20\n47\n60\n31\n", sweep("--speeds", "600 to 2400 by 600 rpm")))
                .contains("A scale of numbers that waver so much is not worth keeping.");
        try (Store store = Run.in(home).store()) {
            assertThat(store.learnedScales().forVehicle("Fieldhand 4")).hasSize(1);
        }
    }
}
