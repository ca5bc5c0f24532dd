package understudy.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import understudy.audio.Device;
import understudy.cli.CalibrateCommand.Result;
import understudy.cli.CalibrateCommand.Setup;
import understudy.store.Calibration;
import understudy.store.NamedRig;
import understudy.store.Store;

/** Keeps calibrations with a rig: good ones become its output, failed ones only stand in its history. */
final class RigCalibrations {

    /** By more than these a value has changed, not scattered; a meter's own accuracy is 1 %. */
    private static final double MOST_VOLTS_PART = 0.03;
    private static final double MOST_OHMS_PART = 0.3;
    private static final double MOST_GAIN_DB = 0.2;
    private static final double MOST_CORNER_PART = 0.1;

    private final Surroundings surroundings;
    private final String method;
    private final NamedRig rig;

    /** @throws BadInput for a cable if the rig's volts were never measured: they would pass for calibrated */
    RigCalibrations(Surroundings surroundings, String name, boolean loopback) {
        this.surroundings = surroundings;
        this.method = loopback ? "loopback" : "meter";
        try (Store store = surroundings.store()) {
            this.rig = store.rigs().find(name);
        }
        if (loopback && !rig.calibrated()) {
            throw new BadInput("--rig: the volts of " + rig.name() + " were never measured, and a cable can't tell them; first run"
                    + " 'understudy calibrate --meter --rig " + rig.name() + "'");
        }
    }

    /** The rig's own, if it has one. */
    Optional<Device> device() {
        return rig.device().map(identity -> RigDevice.find(identity).orElseThrow(() -> new Failed("the audio output of "
                + rig.name() + ", " + RigDevice.label(identity) + ", is not there; plug it in, then try again")));
    }

    /** Keeps what came of a calibration; says where, and what has changed since the last one of its kind. */
    List<String> keep(Setup setup, Result result) {
        if (result.failure().isPresent()) {
            failed(setup, result.failure().get());
            return List.of();
        }
        try (Store store = surroundings.store()) {
            List<String> lines = new ArrayList<>();
            store.rigs().calibrations(rig.name()).stream().filter(past -> past.good() && past.method().equals(method)).findFirst()
                    .ifPresent(past -> lines.addAll(changes(past.values(), result.values())));
            store.rigs().calibrate(rig.name(), new Calibration(surroundings.clock().instant(), method,
                    Optional.of(result.proven().apply(rig.output())), conditions(setup), result.values(), ""));
            lines.add("kept with the rig " + rig.name());
            return lines;
        }
    }

    /** The last good one stands. */
    void failed(Setup setup, String why) {
        try (Store store = surroundings.store()) {
            store.rigs().calibrate(rig.name(), new Calibration(surroundings.clock().instant(), method, Optional.empty(),
                    conditions(setup), Map.of(), why));
        }
    }

    private static Map<String, String> conditions(Setup setup) {
        return new TreeMap<>(Map.of(
                "device", setup.output().device().label(), "channel", "" + (setup.channel() + 1),
                "rate", setup.output().rateHz() + " Hz", "bits", "" + setup.output().format().bits(),
                "level", Math.round(100 * setup.level()) + " %"));
    }

    private List<String> changes(Map<String, Double> before, Map<String, Double> now) {
        List<String> changes = new ArrayList<>();
        part("full scale", "fullScaleVolts", MOST_VOLTS_PART, "the system's volume", before, now, changes);
        part("output resistance", "outputOhms", MOST_OHMS_PART, "the load and the readings", before, now, changes);
        part("AC-coupling corner", "cornerHz", MOST_CORNER_PART, "the cable and the input", before, now, changes);
        if (before.containsKey("gainDb") && now.containsKey("gainDb")
                && Math.abs(now.get("gainDb") - before.get("gainDb")) > MOST_GAIN_DB) {
            changes.add("Mind: the gain has changed by " + Said.decibels(now.get("gainDb") - before.get("gainDb"))
                    + " since the last calibration; check the system's volume and the recording level");
        }
        if (before.containsKey("inverted") && now.containsKey("inverted")
                && !before.get("inverted").equals(now.get("inverted"))) {
            changes.add("Mind: the polarity is the other way round than at the last calibration; check the cable, and whether"
                    + " it is the same device");
        }
        return changes;
    }

    private static void part(String name, String key, double most, String check, Map<String, Double> before,
            Map<String, Double> now, List<String> changes) {
        if (before.containsKey(key) && now.containsKey(key) && Math.abs(now.get(key) / before.get(key) - 1) > most) {
            changes.add("Mind: the " + name + " has changed by " + Said.signed(100 * (now.get(key) / before.get(key) - 1), 0)
                    + " % since the last calibration; check " + check);
        }
    }
}
