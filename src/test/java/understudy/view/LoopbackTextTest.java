package understudy.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import understudy.audio.Device;
import understudy.audio.DeviceChoice;
import understudy.audio.SampleFormat;
import understudy.calibrate.Interference;
import understudy.calibrate.LoopbackFindings;
import understudy.calibrate.TestedOutput;
import understudy.refusal.Control;
import understudy.refusal.Remedy;
import understudy.refusal.Wording;
import understudy.rig.Spread;
import understudy.text.Json;

class LoopbackTextTest {

    private static final Device OUTPUT = new Device("bench", "Bench sound", "", Device.Direction.OUTPUT, 2, false);
    private static final Device INPUT = new Device("line", "Line in", "", Device.Direction.INPUT, 1, true);
    private static final TestedOutput TESTED =
            new TestedOutput(new DeviceChoice(OUTPUT, 48_000, 2, SampleFormat.PCM24, false, true), 1, 0.5);

    /** Scripts rely on the keys, their order, and null where nothing is known; a gain of 0.5 is 20 lg 0.5 = -6.0206 dB. */
    @Test
    void forScripts() {
        Interference clipped = new Interference(Interference.Kind.LIMITED, "loud parts are cut off",
                Remedy.of("give a lower ").set(Control.LEVEL));
        String json = json(findings(0.1, List.of(clipped)), Optional.empty());
        assertThat(json).isEqualTo("{ 'method' : 'loopback', 'at' : '1970-01-01T00:00:00Z', 'device' : 'bench #2', 'channel' : 2,"
                + " 'input' : 'line', 'inputChannel' : 1, 'rateHz' : 48000, 'level' : 0.5, 'fullScaleVolts' : null, 'gain' : 0.5,"
                + " 'gainDb' : -6.02059991328, 'cornerHz' : null, 'inverted' : true, 'latencySeconds' : 0.25,"
                + " 'latencyUncertaintySeconds' : 0.125, 'clockRatio' : 1.000001, 'clockUncertainty' : 1E-9, 'noisePart' : 0,"
                + " 'sinadDb' : 90.5, 'enobBits' : 14.5, 'thdDb' : null, 'harmonicsDb' : [ -90, null ],"
                + " 'response' : [ { 'hz' : 20, 'magnitudeDb' : -6, 'phaseDeg' : 1.5, 'secondDb' : null, 'thirdDb' : -100 } ],"
                + " 'interference' : [ { 'kind' : 'limited', 'message' : 'loud parts are cut off; give a lower level' } ] }");
    }

    @Test
    void whatIsKnownIsNotNull() {
        assertThat(json(findings(3.5, List.of()), Optional.of(new Spread(1.2, 0.03))))
                .contains("'fullScaleVolts' : { 'nominal' : 1.2, 'tolerance' : 0.03 }", "'cornerHz' : 3.5", "'interference' : [ ]");
    }

    private static LoopbackFindings findings(double cornerHz, List<Interference> interference) {
        return new LoopbackFindings(0.5, cornerHz, true, 0.25, 0.125, 1.000001, 1e-9, 90.5, Double.NEGATIVE_INFINITY, 14.5, 0,
                List.of(-90.0, Double.NaN), List.of(new LoopbackFindings.Point(20, -6, 1.5, Double.NaN, -100)), interference);
    }

    private static String json(LoopbackFindings found, Optional<Spread> volts) {
        return Json.text(new LoopbackText(TESTED, INPUT, 0, found, volts, Wording.NEUTRAL).json(Instant.EPOCH))
                .replaceAll("\\s+", " ").replace('"', '\'');
    }
}
