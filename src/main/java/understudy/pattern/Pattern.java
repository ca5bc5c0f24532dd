package understudy.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a person declared to be played, checked and in base units; immutable.
 *
 * @param id        the name it is called by: the file's name without its ending
 * @param title     one line
 * @param purpose   what it is for
 * @param source    where its numbers come from
 * @param hazards   what this kind of circuit can do to people and machines
 * @param cautions  further cautions in the file's own words
 * @param speed     the speed that drives every output
 * @param outputs   in channel order, at least one, names unique
 * @param profile   the speed over time that the file asks for, if any
 * @param faults    departures from the healthy pattern, names unique
 * @param seed      starts every draw of chance, so that the same file plays the same samples
 */
public record Pattern(
        String id,
        String title,
        String purpose,
        String source,
        List<Hazard> hazards,
        List<String> cautions,
        Speed speed,
        List<Output> outputs,
        Optional<Profile> profile,
        List<Fault> faults,
        long seed) {

    public Pattern {
        hazards = List.copyOf(hazards);
        cautions = List.copyOf(cautions);
        outputs = List.copyOf(outputs);
        faults = List.copyOf(faults);
        if (outputs.isEmpty()) {
            throw new IllegalArgumentException("a pattern needs at least one output");
        }
    }

    /** The same pattern under another profile. */
    public Pattern withProfile(Optional<Profile> other) {
        return new Pattern(id, title, purpose, source, hazards, cautions, speed, outputs, other, faults, seed);
    }

    /** The same pattern with another set of faults. */
    public Pattern withFaults(List<Fault> others) {
        return new Pattern(id, title, purpose, source, hazards, cautions, speed, outputs, profile, others, seed);
    }

    /** The same pattern with this fault in place of the one of its name, or after all others. */
    public Pattern withFault(Fault fault) {
        List<Fault> others = new ArrayList<>(faults);
        others.replaceAll(old -> old.place().name().equals(fault.place().name()) ? fault : old);
        if (!others.contains(fault)) {
            others.add(fault);
        }
        return withFaults(others);
    }

    /** The same pattern with other outputs, for instance fewer, or in another channel order. */
    public Pattern withOutputs(List<Output> others) {
        return new Pattern(id, title, purpose, source, hazards, cautions, speed, others, profile, faults, seed);
    }

    /** The same pattern with chance started elsewhere. */
    public Pattern withSeed(long other) {
        return new Pattern(id, title, purpose, source, hazards, cautions, speed, outputs, profile, faults, other);
    }
}
