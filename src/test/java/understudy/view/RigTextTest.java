package understudy.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import understudy.rig.AudioOutput;
import understudy.rig.Coupling;
import understudy.rig.CurrentLimits;
import understudy.rig.Divider;
import understudy.rig.Lead;
import understudy.rig.Spread;
import understudy.store.Calibration;
import understudy.store.DeviceIdentity;
import understudy.store.NamedRig;
import understudy.text.Json;

class RigTextTest {

    private static final Instant MADE = Instant.parse("2026-03-01T12:00:00Z");
    private static final Instant CHANGED = Instant.parse("2026-03-02T12:00:00Z");
    private static final AudioOutput OUTPUT = new AudioOutput(new Spread(1.4, 0.02), new Spread(50, 0.1), Optional.of(new Spread(1e-5, 0.2)),
            false, 2.5);

    /** Scripts rely on the keys, their order, and null where there is nothing. */
    @Test
    void forScripts() {
        Divider divider = new Divider(new Spread(18_000, 0.01), Optional.empty(), new Coupling.Capacitor(new Spread(2e-6, 0.1)));
        NamedRig rig = new NamedRig("bench", Optional.of(new DeviceIdentity("card", "Sound card", "", 2)), OUTPUT, true,
                Optional.of(divider), Lead.USUAL, CurrentLimits.STANDARD, "shelf", MADE, CHANGED);
        List<Calibration> calibrations = List.of(
                new Calibration(CHANGED, "meter", Optional.of(OUTPUT), Map.of("level", "50 %"), Map.of("openVoltsRms", 0.5), ""),
                new Calibration(MADE, "loopback", Optional.empty(), Map.of(), Map.of(), "nothing came back"));
        String output = "'output' : { 'fullScaleVolts' : { 'nominal' : 1.4, 'tolerance' : 0.02 }, 'outputOhms' : { 'nominal' : 50,"
                + " 'tolerance' : 0.1 }, 'couplingFarads' : { 'nominal' : 0.00001, 'tolerance' : 0.2 }, 'inverted' : false,"
                + " 'popVolts' : 2.5 }";
        assertThat(json(rig, calibrations)).isEqualTo("{ 'name' : 'bench', 'device' : { 'name' : 'card', 'description' : 'Sound card',"
                + " 'vendor' : '', 'ordinal' : 2 }, " + output + ", 'calibrated' : true, 'divider' : { 'seriesOhms' :"
                + " { 'nominal' : 18000, 'tolerance' : 0.01 }, 'shuntOhms' : null, 'coupling' : { 'capacitorFarads' : { 'nominal' :"
                + " 0.000002, 'tolerance' : 0.1 } } }, 'lead' : { 'ohms' : { 'nominal' : 0.1, 'tolerance' : 0 }, 'farads' : 2E-10 },"
                + " 'limits' : { 'normalAmps' : 0.001, 'faultAmps' : 0.005, 'overrideReason' : null }, 'notes' : 'shelf',"
                + " 'created' : '2026-03-01T12:00:00Z', 'changed' : '2026-03-02T12:00:00Z', 'calibrations' : ["
                + " { 'at' : '2026-03-02T12:00:00Z', 'method' : 'meter', 'good' : true, " + output + ", 'conditions' : { 'level' :"
                + " '50 %' }, 'values' : { 'openVoltsRms' : 0.5 }, 'remark' : '' },"
                + " { 'at' : '2026-03-01T12:00:00Z', 'method' : 'loopback', 'good' : false, 'output' : null, 'conditions' : { },"
                + " 'values' : { }, 'remark' : 'nothing came back' } ] }");
    }

    @Test
    void aRigThatIsNotBuiltYet() {
        NamedRig rig = new NamedRig("bench", Optional.empty(), AudioOutput.NOMINAL, false, Optional.empty(), Lead.USUAL, CurrentLimits.STANDARD,
                "", MADE, MADE);
        assertThat(json(rig, List.of())).contains("'device' : null", "'divider' : null", "'calibrations' : [ ]");
    }

    private static String json(NamedRig rig, List<Calibration> calibrations) {
        return Json.text(RigText.json(rig, calibrations)).replaceAll("\\s+", " ").replace('"', '\'');
    }
}
