package understudy.hunt;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import understudy.bench.Agreement;
import understudy.bench.Hookup;
import understudy.bench.Outlet;
import understudy.quantity.Range;
import understudy.quantity.Unit;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refusals;
import understudy.rig.Amounts;
import understudy.rig.Input;
import understudy.rig.NamedInput;
import understudy.store.Calibration;
import understudy.store.NamedRig;
import understudy.store.RigWords;
import understudy.store.Store;
import understudy.trace.Circuit;
import understudy.trace.Job;
import understudy.trace.PinLimits;
import understudy.trace.Subjects.Subject;

/** What the signals of a hunt come from: rig, input and outlet, decided once a session. Immutable. */
public final class HuntKit {

    /**
     * What was asked for.
     *
     * @param rig         its name, if one is used
     * @param input       the module's, as {@link NamedInput#read} reads it, if it is known
     * @param fit         whether the signal is scaled to what the rig can give
     * @param rateHz      samples a second
     * @param askedRateHz the rate, if one was asked for; a device otherwise has its own
     */
    public record Request(Optional<String> rig, Optional<String> input, boolean fit, int rateHz, OptionalInt askedRateHz) {}

    /** Decides where it goes, once the rig is known. */
    public interface Outlets {
        Outlet of(Optional<Hookup> hookup, Refusals problems);
    }

    private final Optional<NamedRig> rig;
    private final Optional<Input> input;
    private final Optional<String> inputText;
    private final Outlet outlet;
    private final Injection suspect;
    private final Optional<Injection> reference;
    private final List<String> words;

    private HuntKit(Optional<NamedRig> rig, Optional<Input> input, Optional<String> inputText, Outlet outlet, Injection suspect,
            Optional<Injection> reference, List<String> words) {
        this.rig = rig;
        this.input = input;
        this.inputText = inputText;
        this.outlet = outlet;
        this.suspect = suspect;
        this.reference = reference;
        this.words = List.copyOf(words);
    }

    /** @throws understudy.refusal.Refused with all that is wrong with it */
    public static HuntKit of(Request asked, Subject suspect, Optional<Subject> reference, Store store, Outlets outlets) {
        Refusals problems = new Refusals();
        Optional<Input> input = asked.input().flatMap(written -> NamedInput.read(Location.of(Control.INPUT), written, problems))
                .map(NamedInput::input);
        problems.refuse();
        Optional<Hookup> hookup = Hookup.maybe(asked.rig(), asked.input(), store.rigs()::find, problems);
        Outlet outlet = outlets.of(hookup, problems);
        problems.refuse();
        Injection injected = Injection.of(suspect, hookup, asked.fit(), asked.rateHz(), asked.askedRateHz(), outlet);
        Optional<Injection> onReference = reference.map(other -> Injection.of(other,
                Hookup.maybe(asked.rig(), other.circuit().input().or(asked::input), store.rigs()::find, problems), asked.fit(),
                asked.rateHz(), asked.askedRateHz(), outlet));
        problems.refuse();
        List<String> words = new ArrayList<>(List.of(outlet.note(injected.destination())));
        hookup.map(Hookup::rig).ifPresent(known -> words.addAll(words(known, store.rigs().calibrations(known.name()))));
        asked.input().ifPresent(known -> words.add("input: " + known));
        words.addAll(injected.plan().voltsNote().lines().toList());
        return new HuntKit(hookup.map(Hookup::rig), input, asked.input(), outlet, injected, onReference, words);
    }

    private static List<String> words(NamedRig rig, List<Calibration> calibrations) {
        List<String> lines = new ArrayList<>(List.of("rig " + rig.name() + ": " + RigWords.output(rig),
                "divider: " + RigWords.divider(rig), "limits: " + rig.limits().words()));
        calibrations.stream().filter(Calibration::good).findFirst().ifPresent(latest -> lines.add("calibrated on "
                + latest.at().toString().substring(0, 10) + " by " + latest.method() + latest.output().map(output ->
                        ": full scale " + Amounts.print(output.fullScaleVolts(), Unit.VOLT) + ", "
                        + Amounts.print(output.outputOhms(), Unit.OHM)).orElse("")));
        return lines;
    }

    /** For the record. */
    public Job.Equipment record(Range pinVolts) {
        return new Job.Equipment(rig.map(NamedRig::name), inputText, pinVolts, words);
    }

    /** What it is, a line each; the first says how it plays. */
    public List<String> words() {
        return words;
    }

    public Outlet outlet() {
        return outlet;
    }

    public PinLimits pins(Circuit circuit) {
        return PinLimits.of(circuit, input);
    }

    /** What a session needs to know of it. @param resumed the job was begun in an earlier session */
    public HuntEquipment equipment(Agreement agreement, boolean resumed) {
        return new HuntEquipment(suspect.signal(outlet, agreement), reference.map(injection -> injection.signal(outlet, agreement)), input,
                resumed);
    }

    public Injection injection(boolean onReference) {
        return onReference ? reference.orElseThrow() : suspect;
    }
}
