package understudy.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import picocli.CommandLine.Mixin;
import understudy.bench.Agreement;
import understudy.bench.Hookup;
import understudy.bench.Outlet;
import understudy.hunt.HuntEquipment;
import understudy.quantity.Range;
import understudy.refusal.Control;
import understudy.refusal.Location;
import understudy.refusal.Refused;
import understudy.rig.Input;
import understudy.rig.NamedInput;
import understudy.store.Calibration;
import understudy.store.NamedRig;
import understudy.store.Store;
import understudy.trace.Circuit;
import understudy.trace.Job;
import understudy.trace.PinLimits;
import understudy.trace.Subjects.Subject;
import understudy.view.RigText;

/** What the signals of a hunt come from: rig, input and destination, decided once a session. */
final class TraceEquipment {

    /** The options that say so. */
    static final class Options {

        @Mixin
        private SteadyOptions steady;

        /** What has to be given again to resume as it was. */
        String again() {
            return steady.again();
        }

        /** For a new job. */
        TraceEquipment forNew(Subject suspect, Optional<Subject> reference, Surroundings surroundings) {
            return new TraceEquipment(steady, steady.rig(), steady.input().or(suspect.circuit()::input),
                    suspect, reference, surroundings);
        }

        /** For one that was begun: with the rig and the input that it was begun with. */
        TraceEquipment forBegun(Job.Equipment begun, Subject suspect, Optional<Subject> reference, Surroundings surroundings) {
            if (steady.rig().isPresent() || steady.input().isPresent()) {
                throw new Refused("--resume: rig and input stay those that the job was begun with", "leave --rig and --input out");
            }
            return new TraceEquipment(steady, begun.rig(), begun.input(), suspect, reference, surroundings);
        }
    }

    private final Optional<NamedRig> rig;
    private final Optional<Input> input;
    private final Optional<String> inputWords;
    private final Outlet outlet;
    private final TraceSignal suspect;
    private final Optional<TraceSignal> reference;
    private final Agreement agreement;
    private final List<String> words = new ArrayList<>();

    private TraceEquipment(SteadyOptions options, Optional<String> rigName, Optional<String> inputWords, Subject suspect,
            Optional<Subject> reference, Surroundings surroundings) {
        Arguments given = new Arguments();
        this.agreement = new Agreement(surroundings.folders().settings());
        this.inputWords = inputWords;
        this.input = inputWords.flatMap(written -> NamedInput.read(Location.of(Control.INPUT), written, given)).map(NamedInput::input);
        given.refuse();
        Optional<Hookup> hookup = SteadyOptions.hookup(rigName, inputWords, surroundings, given);
        int rateHz = options.rateHz(given);
        this.rig = hookup.map(Hookup::rig);
        this.outlet = options.place(hookup, given);
        given.refuse();
        OptionalInt asked = options.askedRateHz(given);
        this.suspect = TraceSignal.of(suspect, hookup, options.fit(), rateHz, asked, outlet);
        this.reference = reference.map(other -> TraceSignal.of(other,
                SteadyOptions.hookup(rigName, other.circuit().input().or(() -> inputWords), surroundings, given), options.fit(), rateHz, asked, outlet));
        given.refuse();
        words.add(outlet.note(this.suspect.destination()));
        rig.ifPresent(known -> words.addAll(rigWords(known, surroundings)));
        inputWords.ifPresent(known -> words.add("input: " + known));
        words.addAll(this.suspect.plan().voltsNote().lines().toList());
    }

    private static List<String> rigWords(NamedRig rig, Surroundings surroundings) {
        List<String> lines = new ArrayList<>(List.of("rig " + rig.name() + ": " + RigText.output(rig),
                "divider: " + RigText.divider(rig), "limits: " + rig.limits().words()));
        try (Store store = surroundings.store()) {
            store.rigs().calibrations(rig.name()).stream().filter(Calibration::good).findFirst()
                    .ifPresent(latest -> lines.add(RigText.history(List.of(latest)).get(1).strip() + " (its latest calibration)"));
        }
        return lines;
    }

    /** For the record. */
    Job.Equipment record(Range pinVolts) {
        return new Job.Equipment(rig.map(NamedRig::name), inputWords, pinVolts, words);
    }

    /** A line each. */
    List<String> words() {
        return List.copyOf(words);
    }

    /** How it plays, the first of the words. */
    String way() {
        return words.get(0);
    }

    Outlet outlet() {
        return outlet;
    }

    PinLimits pins(Circuit circuit) {
        return PinLimits.of(circuit, input);
    }

    /** What the session needs to know of it. @param resumed the job was begun in an earlier session */
    HuntEquipment forHunt(boolean resumed) {
        return new HuntEquipment(suspect.forHunt(outlet, agreement), reference.map(signal -> signal.forHunt(outlet, agreement)), input,
                resumed);
    }

    TraceSignal signal(boolean onReference) {
        return onReference ? reference.orElseThrow() : suspect;
    }
}
