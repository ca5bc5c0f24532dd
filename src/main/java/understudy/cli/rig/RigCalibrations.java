package understudy.cli.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import understudy.audio.Device;
import understudy.calibrate.CalibrationChanges;
import understudy.cli.rig.CalibrateCommand.Result;
import understudy.cli.rig.CalibrateCommand.Setup;
import understudy.cli.terminal.CommandWords;
import understudy.cli.terminal.Surroundings;
import understudy.refusal.Refused;
import understudy.rig.AudioOutput;
import understudy.store.Calibration;
import understudy.store.NamedRig;
import understudy.store.Store;

/** Keeps calibrations with a rig: good ones become its output, failed ones only stand in its history. */
final class RigCalibrations {

    private final Surroundings surroundings;
    private final String method;
    private final NamedRig rig;

    /**
     * @param tellsVolts what follows will tell the output's volts
     * @throws Refused if it won't and they were never measured: they would pass for calibrated
     */
    RigCalibrations(Surroundings surroundings, String name, String method, boolean tellsVolts) {
        this.surroundings = surroundings;
        this.method = method;
        try (Store store = surroundings.store()) {
            this.rig = store.rigs().find(name);
        }
        if (!tellsVolts && !rig.calibrated()) {
            throw new Refused("--rig: the volts of " + rig.name() + " were never measured, and a cable alone can't measure them", "first"
                    + " run " + CommandWords.command("calibrate --meter --rig " + CommandWords.quoted(rig.name())) + ", or give --input-full-scale");
        }
    }

    /** What it was taken for until now. */
    AudioOutput output() {
        return rig.output();
    }

    /** The rig's own, if it has one. */
    Optional<Device> device() {
        return rig.device().map(identity -> identity.device().orElseThrow(() -> Refused.setup("the audio output of "
                + rig.name() + ", " + identity.label() + ", is not there", "plug it in, then try again")));
    }

    /** Keeps what came of a calibration; says where, and what has changed since the last one of its kind. */
    List<String> keep(Setup setup, Result result) {
        if (result.failure().isPresent()) {
            failed(setup, result.failure().get());
            return List.of();
        }
        List<String> lines = changes(setup, result);
        try (Store store = surroundings.store()) {
            store.rigs().calibrate(rig.name(), new Calibration(surroundings.clock().instant(), method,
                    Optional.of(result.proven()), conditions(setup), result.values(), ""));
        }
        lines.add("kept with the rig " + rig.name());
        return lines;
    }

    /** The last good one of this kind. */
    private Optional<Calibration> last() {
        try (Store store = surroundings.store()) {
            return store.rigs().calibrations(rig.name()).stream().filter(past -> past.good() && past.method().equals(method)).findFirst();
        }
    }

    /** @throws Refused if there is nothing to compare with */
    void mustHaveOne() {
        if (last().isEmpty()) {
            throw new Refused("--check: " + rig.name() + " has no calibration " + (method.equals("meter") ? "with a meter" : "with a patch cable")
                    + " to compare with", "leave --check out, so that this becomes the first one");
        }
    }

    /** What has changed since the last good one; nothing if this one failed, or is the first. */
    List<String> changes(Setup setup, Result result) {
        return result.failure().isPresent() ? List.of()
                : last().map(past -> new CalibrationChanges(day(past), past.conditions(), past.values(), conditions(setup), result.values()).sentences())
                        .orElseGet(ArrayList::new);
    }

    /** @throws Refused if anything has changed */
    String verdict(List<String> changes) {
        if (!changes.isEmpty()) {
            throw Refused.setup("the output is not what it was when it was calibrated; put this right, or calibrate again without"
                    + " --check", "what was kept with " + rig.name() + " stands");
        }
        return "nothing has changed since the calibration of " + last().map(RigCalibrations::day).orElseThrow()
                + "; what was kept with " + rig.name() + " stands";
    }

    private static String day(Calibration past) {
        return past.at().toString().substring(0, 10);
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
}
