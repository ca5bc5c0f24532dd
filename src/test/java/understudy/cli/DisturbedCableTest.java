package understudy.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.jr.ob.JSON;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.audio.LoopbackCard;
import understudy.cli.terminal.ExitCode;

/**
 * Whatever a system may do to the sound on its way, done to a real line by the sound server itself or by sox, is called by
 * name, and nothing is kept. Each takes as long as the calibration plays.
 */
@Tag("real-time")
class DisturbedCableTest {

    @TempDir
    private Path home;

    /** The card's own rate is 44 100 Hz, as most systems' default once was; the server converts both ways. */
    @Test
    void itResamples() throws Exception {
        try (LoopbackCard card = LoopbackCard.startAt(44_100)) {
            refused(card, "resampled", "a tone of 21.84 kHz comes back");
        }
    }

    /** Half an octave around 3 kHz, 3 dB up. */
    @Test
    void itEqualises() throws Exception {
        try (LoopbackCard card = LoopbackCard.start()) {
            card.through("equalizer", "3000", "1q", "3");
            refused(card, "equalised", "kHz is 2.");
        }
    }

    /** Twice as loud in decibels counts half above -20 dB of full scale: 0.5 is -6 dB and comes out at -10 dB. */
    @Test
    void itLimits() throws Exception {
        try (LoopbackCard card = LoopbackCard.start()) {
            card.through("compand", "0.005,0.1", "6:-20,-20,-6,-10", "0", "-90", "0.005");
            refused(card, "limited", "a loud tone comes back 2.");
        }
    }

    @Test
    void itMixes() throws Exception {
        try (LoopbackCard card = LoopbackCard.start()) {
            card.mix("bench", 440, 0.003);
            // 0.003 of a tone of 0.5, of which it is an rms against a peak: 0.6 %/sqrt 2
            refused(card, "mixed", "where silence was played, 0.42 % of the tone comes back, 0.1 % is allowed: other programs");
        }
    }

    @Test
    void itHums() throws Exception {
        try (LoopbackCard card = LoopbackCard.start()) {
            card.mix("bench", 50.02, 0.003);
            refused(card, "hum", "where silence was played, 0.42 % of the tone comes back, 0.1 % is allowed: mains hum of 50 Hz");
        }
    }

    private void refused(LoopbackCard card, String kind, String says) throws IOException {
        Run.Outcome run = BusyMachine.calibrated(card, () -> Run.in(home).understudy("calibrate", "--loopback", "--yes", "--device",
                card.output().label(), "--json", "--out", home.resolve("none.json").toString()));
        assertThat(run.exitCode()).as(run.out() + run.err()).isEqualTo(ExitCode.FAILED);
        List<?> interference = (List<?>) JSON.std.mapFrom(run.out()).get("interference");
        assertThat(interference).hasSize(1);
        assertThat(((Map<?, ?>) interference.get(0)).get("kind")).isEqualTo(kind);
        assertThat(run.err()).contains(says, "the output is not proven, and no calibration was kept");
        assertThat(home.resolve("none.json")).doesNotExist();
    }
}
