package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import understudy.audio.LoopbackCard;
import understudy.cli.terminal.ExitCode;
import understudy.store.Calibration;
import understudy.store.Store;

/**
 * A patch cable that is missing or badly set, on a real line: it is called by name after the first pulses, and what was
 * kept with the rig stands.
 */
@Tag("real-time")
class PoorCableTest {

    @TempDir
    private Path home;

    @BeforeEach
    void aRigWhoseVoltsAreKnown() throws Exception {
        assertThat(Run.in(home).understudy("rig", "make", "bench-1").exitCode()).isZero();
        try (LoopbackCard card = LoopbackCard.start()) {
            assertThat(Run.in(home).atTerminal("0.512\n").understudy("calibrate", "--meter", "--yes", "--rig", "bench-1",
                    "--device", card.output().label()).exitCode()).isZero();
        }
    }

    @Test
    void noCable() throws Exception {
        try (LoopbackCard card = LoopbackCard.start()) {
            card.unplug();
            refused("channel 1: every sample is zero; is the input muted");
        }
    }

    /** An open input is never silent: it picks up the mains. */
    @Test
    void noCableButHum() throws Exception {
        try (LoopbackCard card = LoopbackCard.start()) {
            card.unplug();
            card.mix("elsewhere", 50, 0.004);
            refused("channel 1: nothing of what is played comes back, only hum or noise of 0.40 % of full scale");
        }
    }

    /** Level is 50 %. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "300 | clipped, ",
        "198 | too high, peaks at 99.0 % of full scale, at most 98 % leave room; lower the recording level",
        "4 | too low, peaks at 2.00 % of full scale, at least 3 % are needed; raise the recording level, or use a line input"})
    void recordingLevel(int percent, String says) throws Exception {
        try (LoopbackCard card = LoopbackCard.start()) {
            card.volumes(100, percent);
            refused("channel 1: " + says);
        }
    }

    /** Somebody pulls the plug: three seconds of nothing, and it is told. */
    @Test
    void theRecordingEndsEarly() throws Exception {
        try (LoopbackCard card = LoopbackCard.start()) {
            Thread pull = new Thread(() -> {
                try {
                    Thread.sleep(4000);
                } catch (InterruptedException e) {
                    throw new AssertionError(e);
                }
                card.kill();
            });
            pull.start();
            Run.Outcome run = Run.in(home).understudy("calibrate", "--loopback", "--yes", "--rig", "bench-1");
            pull.join();
            assertThat(run.exitCode()).as(run.out() + run.err()).isEqualTo(ExitCode.FAILED);
            assertThat(run.err()).contains(" is lost", "then start again", "no calibration was kept");
            theOldOneStands();
        }
    }

    private void refused(String says) {
        Run.Outcome run = Run.in(home).understudy("calibrate", "--loopback", "--yes", "--rig", "bench-1");
        assertThat(run.exitCode()).as(run.out() + run.err()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.err()).startsWith("audio input \"default [default]\": " + says).endsWith("; no calibration was kept\n");
        theOldOneStands();
    }

    private void theOldOneStands() {
        try (Store store = Store.open(Run.in(home).folders().data().resolve("understudy.db"))) {
            assertThat(store.rigs().calibrations("bench-1")).extracting(Calibration::good).containsExactly(false, true);
            assertThat(store.rigs().find("bench-1").calibrated()).isTrue();
        }
    }
}
