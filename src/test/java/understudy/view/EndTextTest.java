package understudy.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import understudy.audio.Destination;
import understudy.audio.Device;
import understudy.audio.DeviceChoice;
import understudy.audio.PlayerEnd;
import understudy.audio.PlayerReport;
import understudy.audio.SampleFormat;
import understudy.audio.Silent;
import understudy.audio.Underrun;

class EndTextTest {

    private static final Device DEVICE = new Device("bench", "Bench sound", "", Device.Direction.OUTPUT, 2, false);

    @Test
    void aCleanRehearsalIsShort() {
        PlayerReport report = new PlayerReport(new PlayerEnd.Finished(), new Silent(48_000, 1), "", 2, 96_000, 0, List.of(), 0,
                0, 80, 80, 200, 0, 0.85, false, "Test system");
        assertThat(EndText.lines(report)).containsExactly(
                "finished after 2.0 s, 96000 frames at 48000 Hz, in silence",
                "no underruns",
                "latency 80 ms, buffer 200 ms",
                "largest sample 85 % of full scale, none cut off",
                "Test system");
    }

    @Test
    void everythingThatWentWrongIsTold() {
        Destination device = new DeviceChoice(DEVICE, 96_000, 2, SampleFormat.PCM24, false, true);
        List<Underrun> underruns = List.of(
                new Underrun(1, 30, Underrun.Cause.WRITER_LATE), new Underrun(2, 12, Underrun.Cause.SINK_STALLED),
                new Underrun(3, 8, Underrun.Cause.WRITER_LATE));
        PlayerReport report = new PlayerReport(new PlayerEnd.Stopped(), device, "S16_LE, 2 channels, 48000 Hz", 61.25, 5_880_000, 3, underruns, 30,
                2, 40, 55, 200, 17, 1.02, true, "Test system");
        assertThat(EndText.lines(report)).containsExactly(
                "stopped after 61.3 s, 5880000 frames at 96000 Hz, 24 bits, to \"bench #2\"",
                "the hardware itself ran at S16_LE, 2 channels, 48000 Hz",
                "underruns: 3, the longest 30 ms; the machine was busy: 2, the sound system took nothing: 1",
                "latency 55 ms (raised from 40 ms by the underruns), buffer 200 ms",
                "largest sample 102 % of full scale, 17 cut off",
                "the device took nothing for a second or longer, 2 times",
                "the device did not close and was left to itself",
                "Test system");
    }
}
