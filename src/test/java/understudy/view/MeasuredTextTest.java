package understudy.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import understudy.audio.Recorded;
import understudy.refusal.Wording;
import understudy.text.Json;

class MeasuredTextTest {

    private static final int RATE_HZ = 48_000;

    /** Scripts rely on the keys and their order, and on null for what is not there: a pure tone has no teeth and no pattern. */
    @Test
    void forScripts() {
        double[] tone = new double[RATE_HZ];
        for (int i = 0; i < tone.length; i++) {
            tone[i] = 0.5 * Math.sin(2 * Math.PI * 997 * i / RATE_HZ);
        }
        Recorded recorded = new Recorded("tone.wav", RATE_HZ, 24, new double[][] {tone}, 1, false);
        MeasuredChannel channel = new MeasuredChannel(recorded, 1, 2, Optional.empty(), 0, Double.NaN);
        Map<String, Object> json = Json.read(Json.text(channel.measure(0, Wording.NEUTRAL).json()), "json");
        assertThat(json.keySet()).containsExactly("source", "rateHz", "bits", "channel", "fullScaleVolts", "seconds", "leftOutSeconds",
                "faults", "peakVolts", "rmsVolts", "meanVolts", "tone", "lines", "betweenHarmonics", "wheel", "pulses", "timing");
        assertThat(json).containsEntry("source", "tone.wav").containsEntry("bits", 24).containsEntry("timing", null);
        assertThat(((Map<?, ?>) json.get("tone")).keySet())
                .hasToString("[frequencyHz, peakVolts, sinadDb, snrDb, thdDb, sfdrDb, enobBits]");
    }
}
