package understudy.store;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import understudy.audio.Device;
import understudy.calibrate.CalibrationChanges;
import understudy.calibrate.TestedOutput;
import understudy.refusal.Control;
import understudy.refusal.Deed;
import understudy.refusal.Location;
import understudy.refusal.Refusal;
import understudy.refusal.Refused;
import understudy.refusal.Remedy;
import understudy.rig.AudioOutput;

/**
 * The calibrations of one rig by one method: a good one becomes the rig's output, a failed one only stands in its history.
 * The store is open while it is asked, not while the output is measured.
 */
public final class RigCalibrations {

    private final Supplier<Store> stores;
    private final Clock clock;
    private final String method;
    private final NamedRig rig;

    /**
     * @param method     how it is calibrated: meter, loopback
     * @param tellsVolts whether that measures the output's volts
     * @throws Refused if it doesn't and they were never measured: they would pass for calibrated
     */
    public RigCalibrations(Supplier<Store> stores, Clock clock, String name, String method, boolean tellsVolts) {
        this.stores = stores;
        this.clock = clock;
        this.method = method;
        try (Store store = stores.get()) {
            this.rig = store.rigs().find(name);
        }
        if (!tellsVolts && !rig.calibrated()) {
            throw new Refused(new Refusal(Location.of(Control.RIG), "the volts of " + rig.name()
                    + " were never measured, and a cable alone can't measure them",
                    Remedy.of("first run ").perform(Deed.CALIBRATE_BY_METER, rig.name()).then(", or give ").set(Control.INPUT_FULL_SCALE)));
        }
    }

    /** What its output was taken for until now. */
    public AudioOutput output() {
        return rig.output();
    }

    /** The rig's own device, if it has one. */
    public Optional<Device> device() {
        return rig.device().map(identity -> identity.device().orElseThrow(() -> Refused.setup("the audio output of "
                + rig.name() + ", " + identity.label() + ", is not there", "plug it in, then try again")));
    }

    /**
     * Keeps a good calibration.
     *
     * @param proven the output, with what is known now
     * @param values what was found, by name with the unit in it
     * @return what has changed since the last one, and that it is kept
     */
    public List<String> keep(TestedOutput tested, AudioOutput proven, Map<String, Double> values) {
        List<String> lines = changes(tested, values);
        keep(tested, Optional.of(proven), values, "");
        lines.add("kept with the rig " + rig.name());
        return lines;
    }

    /** Keeps that one failed; the last good one stands. */
    public void failed(TestedOutput tested, String why) {
        keep(tested, Optional.empty(), Map.of(), why);
    }

    private void keep(TestedOutput tested, Optional<AudioOutput> proven, Map<String, Double> values, String why) {
        try (Store store = stores.get()) {
            store.rigs().calibrate(rig.name(), new Calibration(clock.instant(), method, proven, conditions(tested), values, why));
        }
    }

    /** The last good one. */
    private Optional<Calibration> last() {
        try (Store store = stores.get()) {
            return store.rigs().calibrations(rig.name()).stream().filter(past -> past.good() && past.method().equals(method)).findFirst();
        }
    }

    /** @throws Refused if there is nothing to compare with */
    public void mustHaveOne() {
        if (last().isEmpty()) {
            throw new Refused(new Refusal(Location.of(Control.CHECK), rig.name() + " has no calibration "
                    + (method.equals("meter") ? "with a meter" : "with a patch cable") + " to compare with",
                    Remedy.of("leave ").set(Control.CHECK).then(" out, so that this becomes the first one")));
        }
    }

    /** What has changed since the last good one; nothing if this is the first. */
    public List<String> changes(TestedOutput tested, Map<String, Double> values) {
        return last().map(past -> new CalibrationChanges(day(past), past.conditions(), past.values(), conditions(tested), values).sentences())
                .orElseGet(ArrayList::new);
    }

    /** @throws Refused if anything has changed */
    public String verdict(List<String> changes) {
        if (!changes.isEmpty()) {
            throw new Refused(Refused.Mend.SETUP, List.of(new Refusal(Location.NOWHERE, "the output is not what it was when it was calibrated",
                    Remedy.of("put this right, or calibrate again without ").set(Control.CHECK)
                            .then("; what was kept with " + rig.name() + " stands"))), null);
        }
        return "nothing has changed since the calibration of " + last().map(this::day).orElseThrow()
                + "; what was kept with " + rig.name() + " stands";
    }

    /** Where the user is. */
    private String day(Calibration past) {
        return LocalDate.ofInstant(past.at(), clock.getZone()).toString();
    }

    private static Map<String, String> conditions(TestedOutput tested) {
        return new TreeMap<>(Map.of(
                "device", tested.output().device().label(), "channel", "" + (tested.channel() + 1),
                "rate", tested.output().rateHz() + " Hz", "bits", "" + tested.output().format().bits(),
                "level", Math.round(100 * tested.level()) + " %"));
    }
}
