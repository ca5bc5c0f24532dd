package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import understudy.cli.terminal.ExitCode;
import understudy.reading.DisplayUnit;
import understudy.reading.Learned;
import understudy.reading.Pair;
import understudy.reading.Reading;
import understudy.store.LearnedScale;
import understudy.store.Store;
import understudy.trace.Entry;
import understudy.trace.Hunt;

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

    /** On the speedometer of the Fieldhand 4, as a sweep would: 0.2 km/h for each Hz. */
    private void keepForTheSpeedometer() {
        Learned learned = Learned.of(List.of(new Pair(100, 20), new Pair(200, 40), new Pair(500, 100)), DisplayUnit.KMH, OptionalDouble.of(1));
        try (Store store = Run.in(home).store()) {
            store.learnedScales().keep(LearnedScale.of("Fieldhand 4", "fieldhand-4-speedometer", learned, Instant.EPOCH, "a test"));
        }
    }

    @Test
    void whatIsExpectedFollowsTheKeptScaleWhereThatIsAskedFor() {
        String[] plain = {"expect", "fieldhand-4-speedometer", "--speed", "1200 rpm"};
        String before = fine("", plain);
        assertThat(before).doesNotContain("learned");
        assertThat(Run.in(home).folders().data()).as("nothing is kept by a question").doesNotExist();
        keepForTheSpeedometer();
        assertThat(words(fine("", plain))).startsWith(words(before).strip()).contains("For this vehicle a scale is kept: learned on vehicle"
                + " \"Fieldhand 4\" on 1970-01-01 (a test), 0.2 km/h for each Hz. Add --learned");
        // 1200 rpm are 20 turns of 17 teeth a second: 340 Hz
        assertThat(fine("", "expect", "fieldhand-4-speedometer", "--speed", "1200 rpm", "--learned")).contains("should show 68 km/h");
        Run.Outcome other = Run.in(home).understudy("expect", "fieldhand-4-speedometer", "--vehicle", "another", "--learned");
        assertThat(other.exitCode()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(other.err()).startsWith("--learned: nothing was learned yet of circuit fieldhand-4-speedometer on vehicle \"another\"; ");
    }

    @Test
    void aHuntKeepsTheScaleThatItExpectsBy() {
        keepForTheSpeedometer();
        String[] begin = {"trace", "fieldhand-4-speedometer", "--to", "silent", "--complaint", "none", "--who", "the class"};
        String typed = "\n"; // the vehicle that is proposed
        String plain = fine(typed, Stream.concat(Arrays.stream(begin), Stream.of("--job", "plain")).toArray(String[]::new));
        assertThat(plain).contains("For this vehicle a scale is kept:");
        fine(typed, Stream.concat(Arrays.stream(begin), Stream.of("--job", "scaled", "--learned")).toArray(String[]::new));
        try (Store store = Run.in(home).store()) {
            assertThat(Hunt.of(store.jobs().find("plain")).circuit().reading().kind()).isEqualTo(Reading.Kind.VEHICLE_SPEED);
            Hunt scaled = Hunt.of(store.jobs().find("scaled"));
            assertThat(scaled.circuit().reading().expected(340).orElseThrow().value()).isCloseTo(68, within(1e-9));
            assertThat(((Entry.Noted) scaled.events().get(0).entry()).words()).startsWith("Expected by what was learned on vehicle");
        }
    }
}
