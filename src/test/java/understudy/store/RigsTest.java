package understudy.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.refusal.Refused;

class RigsTest {

    @TempDir
    private Path folder;

    /** Each in a store opened for this alone, so that whatever is seen afterwards came off the disk. */
    private void on(Consumer<Rigs> work) {
        try (Store store = Store.open(folder.resolve("understudy.db"))) {
            work.accept(store.rigs());
        }
    }

    @Test
    void whatWasMadeComesBackWholeWhateverItsKind() {
        List<NamedRig> made = List.of(Samples.withTransformer("a-bench"), Samples.withCapacitor("b"), Samples.straight("C"),
                Samples.unbuilt("d_2"));
        made.forEach(rig -> on(rigs -> rigs.make(rig)));
        on(rigs -> assertThat(rigs.all()).isEqualTo(made));
        on(rigs -> assertThat(rigs.find("A-BENCH")).isEqualTo(made.get(0)));
    }

    @Test
    void aChangeReplacesAllButTheCalibrations() {
        on(rigs -> rigs.make(Samples.withTransformer("bench")));
        on(rigs -> rigs.calibrate("bench", Samples.good(1.3)));
        on(rigs -> rigs.change("bench", Samples.straight("table")));
        on(rigs -> {
            assertThat(rigs.all()).isEqualTo(List.of(Samples.straight("table")));
            assertThat(rigs.calibrations("table")).isEqualTo(List.of(Samples.good(1.3)));
        });
    }

    @Test
    void aGoodCalibrationBecomesTheOutputAndAFailedOneOnlyJoinsTheHistory() {
        on(rigs -> rigs.make(Samples.withTransformer("bench")));
        on(rigs -> rigs.calibrate("bench", Samples.good(1.3)));
        NamedRig calibrated = Samples.withTransformer("bench").withOutput(Samples.output(1.3), true)
                .changedAt(Samples.good(1.3).at());
        on(rigs -> assertThat(rigs.find("bench")).isEqualTo(calibrated));
        on(rigs -> rigs.calibrate("bench", Samples.failed()));
        on(rigs -> {
            assertThat(rigs.find("bench")).isEqualTo(calibrated);
            assertThat(rigs.calibrations("bench")).isEqualTo(List.of(Samples.failed(), Samples.good(1.3)));
        });
    }

    @Test
    void removingTakesTheCalibrationsAlong() {
        on(rigs -> rigs.make(Samples.straight("bench")));
        on(rigs -> rigs.calibrate("bench", Samples.good(1.3)));
        on(rigs -> rigs.remove("bench"));
        on(rigs -> assertThat(rigs.all()).isEmpty());
        // a new rig of the old name must not inherit them
        on(rigs -> rigs.make(Samples.straight("bench")));
        on(rigs -> assertThat(rigs.calibrations("bench")).isEmpty());
    }

    @Test
    void namesThatAreTakenOrUnknownAreRefusedAndNothingChanges() {
        on(rigs -> rigs.make(Samples.straight("bench")));
        on(rigs -> rigs.make(Samples.straight("table")));
        on(rigs -> {
            assertThatThrownBy(() -> rigs.make(Samples.unbuilt("Bench"))).isInstanceOf(Refused.class).hasMessage(
                    "there is a rig called Bench already; give another name, or change that one: change that rig Bench");
            assertThatThrownBy(() -> rigs.change("bench", Samples.unbuilt("TABLE"))).isInstanceOf(Refused.class)
                    .hasMessage("there is another rig called TABLE already; give another name");
            for (Runnable unknown : List.<Runnable>of(() -> rigs.find("x"), () -> rigs.remove("x"), () -> rigs.calibrations("x"),
                    () -> rigs.change("x", Samples.unbuilt("y")), () -> rigs.calibrate("x", Samples.failed()))) {
                assertThatThrownBy(unknown::run).isInstanceOf(Refused.class)
                        .hasMessage("there is no rig called \"x\"; there are: bench, table");
            }
        });
        on(rigs -> assertThat(rigs.all()).isEqualTo(List.of(Samples.straight("bench"), Samples.straight("table"))));
    }

    @Test
    void theFirstRigIsAskedForByCommand() {
        on(rigs -> assertThatThrownBy(() -> rigs.find("bench"))
                .hasMessage("there is no rig called \"bench\"; make one: make a rig"));
    }

    @Test
    void aNameFitsACommandLine() {
        for (String name : new String[] {"", " ", "my bench", "-x", "a;b", "é", "x".repeat(41)}) {
            assertThatThrownBy(() -> Samples.straight(name)).isInstanceOf(Refused.class).hasMessage("\"" + name
                    + "\" is no name for a rig; give 1 to 40 letters, digits, - and _, like bench-1");
        }
    }
}
