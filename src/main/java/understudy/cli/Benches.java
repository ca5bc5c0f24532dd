package understudy.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import understudy.pattern.Output;
import understudy.pattern.Pattern;
import understudy.store.DeviceIdentity;
import understudy.wave.DroopFree;
import understudy.wave.MeanVolts;
import understudy.wave.VoltSource;

/** What each output that is played goes through: a rig on an input, the same for all or its own; or nothing is told of that. */
final class Benches {

    private final Map<String, Bench> ofOutput = new LinkedHashMap<>();
    private DroopFree playing;

    private Benches() {}

    /** Whatever is wrong is left with {@code given}. */
    static Benches read(List<String> rigs, List<String> inputs, Pattern pattern, List<Output> played,
            Surroundings surroundings, Arguments given) {
        List<String> names = pattern.outputs().stream().map(Output::name).toList();
        PerOutput rigOf = PerOutput.read("--rig", rigs, names, given);
        PerOutput inputOf = PerOutput.read("--input", inputs, names, given);
        Benches benches = new Benches();
        if (rigOf.isEmpty() && inputOf.isEmpty() || !rigOf.understood() || !inputOf.understood()) {
            return benches;
        }
        Map<List<String>, Optional<Bench>> known = new HashMap<>(); // outputs that are told alike share one, and its problems
        for (Output output : played) {
            String rig = rigOf.of(output).orElse(null);
            String input = inputOf.of(output).orElse(null);
            String whom = rigOf.tellsApart() || inputOf.tellsApart() ? " of output " + output.name() : "";
            known.computeIfAbsent(Arrays.asList(rig, input), told -> {
                if (rig == null && input == null) {
                    given.problem("--rig", "nothing is said" + whom, "add --rig " + output.name() + "=NAME and --input "
                            + output.name() + "=KIND, or leave it out with --channels");
                } else if (rig == null) {
                    given.problem("--input", "it says nothing" + whom + " without a rig", "add --rig NAME, or leave it out");
                } else if (input == null) {
                    given.problem("--rig", "the volts at the pins" + whom + " depend on the input too",
                            "add --input KIND; 'understudy input' lists the kinds");
                } else {
                    return Bench.read(rig, input, surroundings, given);
                }
                return Optional.empty();
            }).ifPresent(bench -> benches.ofOutput.put(output.name(), bench));
        }
        benches.checkDevice(given);
        return benches;
    }

    /** For one output alone. */
    static Benches only(Output output, Optional<Bench> bench) {
        Benches benches = new Benches();
        bench.ifPresent(known -> benches.ofOutput.put(output.name(), known));
        return benches;
    }

    /** The same, before anything has been played through them. */
    Benches anew() {
        Benches benches = new Benches();
        benches.ofOutput.putAll(ofOutput);
        return benches;
    }

    private List<Bench> all() {
        return ofOutput.values().stream().distinct().toList();
    }

    private void checkDevice(Arguments given) {
        List<String> devices = all().stream().flatMap(bench -> bench.rig().device().stream()).distinct().map(RigDevice::label)
                .toList();
        if (devices.size() > 1) {
            given.problem("--rig", "these rigs belong to different audio outputs, " + String.join(" and ", devices),
                    "one device plays all outputs: take rigs that are made for it");
        }
    }

    boolean isEmpty() {
        return ofOutput.isEmpty();
    }

    Optional<Bench> of(Output output) {
        return Optional.ofNullable(ofOutput.get(output.name()));
    }

    /** The audio device that their volts hold for, if they hold for one only. */
    Optional<DeviceIdentity> device() {
        return all().stream().flatMap(bench -> bench.rig().device().stream()).findFirst();
    }

    /** Refuses to play through a rig that breaks its limits, every time anew. */
    void checkLimits(Pattern pattern, Arguments given) {
        for (Bench bench : all()) {
            bench.checkLimits(pattern, pattern.outputs().stream().filter(output -> of(output).filter(bench::equals).isPresent())
                    .toList(), given);
        }
    }

    /** Between renderer and output: undoes the droop, and makes parts of full scale of the volts. */
    DroopFree bend(VoltSource source, Pattern pattern, double level) {
        double[] means = pattern.outputs().stream().mapToDouble(MeanVolts::of).toArray();
        DroopFree bent = new DroopFree(source, pattern.outputs().stream().map(output -> of(output).map(Bench::connection)).toList(),
                means, level);
        if (playing == null) {
            playing = bent; // a second one only warms up
        }
        return bent;
    }

    /** After playing: what full scale did not allow, if anything. */
    Optional<String> shortage() {
        long frames = playing == null ? 0 : playing.clippedFrames();
        return frames == 0 ? Optional.empty() : Optional.of("full scale was not enough for " + frames
                + " samples: the signal drooped or was cut there; a lower level, or --fit, leaves more room");
    }

    /** What the volts of each are worth; empty without a rig. */
    Optional<String> note() {
        List<String> notes = new ArrayList<>();
        for (Bench bench : all()) {
            String whose = ofOutput.entrySet().stream().filter(entry -> entry.getValue() == bench).map(Map.Entry::getKey)
                    .collect(Collectors.joining(", "));
            notes.add((all().size() > 1 ? whose + ": " : "") + bench.note());
        }
        return notes.isEmpty() ? Optional.empty() : Optional.of(String.join("\n", notes));
    }
}
