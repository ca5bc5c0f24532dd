package understudy.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.refusal.Control;
import understudy.refusal.Deed;
import understudy.refusal.Refusals;
import understudy.refusal.Remedy;
import understudy.store.DeviceIdentity;
import understudy.store.NamedRig;

/** What each output that is played goes through: a rig on an input, the same for all or its own; or nothing is known of that. */
public final class Hookups {

    public static final Hookups NONE = new Hookups(Map.of());

    private final Map<String, Hookup> ofOutput;

    private Hookups(Map<String, Hookup> ofOutput) {
        this.ofOutput = ofOutput;
    }

    /**
     * Whatever is wrong is left with {@code problems}.
     *
     * @param rigs   for each output the name of its rig
     * @param inputs for each output what its input is, as {@link understudy.rig.NamedInput#read} reads it
     * @param rig    finds a rig by its name
     */
    public static Hookups read(
            PerOutput rigs, PerOutput inputs, List<Output> played, Function<String, NamedRig> rig, Refusals problems) {
        if (rigs.isEmpty() && inputs.isEmpty() || !rigs.understood() || !inputs.understood()) {
            return NONE;
        }
        boolean apart = rigs.differs() || inputs.differs();
        Map<List<String>, Optional<Hookup>> known = new HashMap<>(); // outputs with the same words share one, and its problems
        Map<String, Hookup> ofOutput = new LinkedHashMap<>();
        for (Output output : played) {
            List<String> words = Arrays.asList(rigs.of(output).orElse(null), inputs.of(output).orElse(null));
            known.computeIfAbsent(words, both -> read(both.get(0), both.get(1), output, apart, rig, problems))
                    .ifPresent(hookup -> ofOutput.put(output.name(), hookup));
        }
        Hookups hookups = new Hookups(ofOutput);
        hookups.checkDevice(problems);
        return hookups;
    }

    private static Optional<Hookup> read(String rigName, String inputText, Output output, boolean apart,
            Function<String, NamedRig> rig, Refusals problems) {
        String whom = apart ? " of output " + output.name() : "";
        if (rigName == null && inputText == null) {
            problems.add(Control.RIG, "nothing is said" + whom, Remedy.of("add ").set(Control.RIG, output.name() + "=NAME")
                    .then(" and ").set(Control.INPUT, output.name() + "=KIND").then(", or leave it out with ").set(Control.CHANNELS));
        } else if (rigName == null) {
            problems.add(Control.INPUT, "it says nothing" + whom + " without a rig",
                    Remedy.of("add ").set(Control.RIG, "NAME").then(", or leave it out"));
        } else if (inputText == null) {
            problems.add(Control.RIG, "the volts at the pins" + whom + " depend on the input too",
                    Remedy.of("add ").set(Control.INPUT, "KIND").then("; ").perform(Deed.LIST_INPUTS, "").then(" lists the kinds"));
        } else {
            return Hookup.read(rigName, inputText, rig, problems);
        }
        return Optional.empty();
    }

    /** Of the same rig on the same input for all; each alone. */
    public static Hookups all(List<Output> played, Optional<Hookup> hookup) {
        Map<String, Hookup> ofOutput = new LinkedHashMap<>();
        hookup.ifPresent(known -> played.forEach(output -> ofOutput.put(output.name(), known)));
        return new Hookups(ofOutput);
    }

    private List<Hookup> distinct() {
        return ofOutput.values().stream().distinct().toList();
    }

    private void checkDevice(Refusals problems) {
        List<String> devices = distinct().stream().flatMap(hookup -> hookup.rig().device().stream()).distinct()
                .map(DeviceIdentity::label).toList();
        if (devices.size() > 1) {
            problems.add(Control.RIG, "these rigs belong to different audio outputs, " + String.join(" and ", devices),
                    "one device plays all outputs: take rigs that are made for it");
        }
    }

    public boolean isEmpty() {
        return ofOutput.isEmpty();
    }

    public Optional<Hookup> of(Output output) {
        return Optional.ofNullable(ofOutput.get(output.name()));
    }

    /** The audio device that their volts hold for, if they hold for one only. */
    public Optional<DeviceIdentity> device() {
        return distinct().stream().flatMap(hookup -> hookup.rig().device().stream()).findFirst();
    }

    /** Refuses to play through a rig that breaks its limits, every time anew. */
    void checkLimits(Pattern pattern, Refusals problems) {
        for (Hookup hookup : distinct()) {
            List<Output> its = pattern.outputs().stream().filter(output -> of(output).filter(hookup::equals).isPresent()).toList();
            hookup.checkLimits(pattern, its, problems);
        }
    }

    /** What the volts of each are worth; empty without a rig. */
    Optional<String> note() {
        List<String> notes = new ArrayList<>();
        for (Hookup hookup : distinct()) {
            String whose = ofOutput.entrySet().stream().filter(entry -> entry.getValue() == hookup).map(Map.Entry::getKey)
                    .collect(Collectors.joining(", "));
            notes.add((distinct().size() > 1 ? whose + ": " : "") + hookup.note());
        }
        return notes.isEmpty() ? Optional.empty() : Optional.of(String.join("\n", notes));
    }
}
