package understudy.refusal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** Gathers all that is wrong with what was given, so that one try shows it all. */
public class Refusals {

    private final List<Refusal> found = new ArrayList<>();

    public void add(Refusal refusal) {
        found.add(refusal);
    }

    public void add(Control control, String wrong, String right) {
        add(control, wrong, Remedy.of(right));
    }

    public void add(Control control, String wrong, Remedy remedy) {
        add(new Refusal(Location.of(control), wrong, remedy));
    }

    /** All that was refused, at {@code location} where it doesn't say where itself. */
    public void add(Location location, Refused refused) {
        refused.refusals().forEach(refusal -> add(refusal.at(location)));
    }

    /** What {@code reading} gives, unless it refuses. */
    public <T> Optional<T> attempt(Location location, Supplier<T> reading) {
        try {
            return Optional.of(reading.get());
        } catch (Refused e) {
            add(location, e);
            return Optional.empty();
        }
    }

    /** A value, unless it was refused. */
    public <T> Optional<T> value(Result<T> result) {
        result.problems().forEach(this::add);
        return result.value();
    }

    public boolean isEmpty() {
        return found.isEmpty();
    }

    /** In the order in which they were found. */
    public List<Refusal> list() {
        return List.copyOf(found);
    }

    /** Throws all that was wrong, if anything was. */
    public void refuse() {
        if (!found.isEmpty()) {
            throw new Refused(found);
        }
    }
}
