package understudy.trace;

import java.util.List;
import understudy.refusal.Result;
import understudy.text.Shelf;
import understudy.text.Source;

/** The shipped circuits, which travel inside the jar, and circuits in files of the user's own. */
public final class CircuitLibrary {
    private static final Shelf SHELF = new Shelf("/patterns/circuits/", "circuit.schema.json", "circuit", "my-circuit.yaml");

    private CircuitLibrary() {}

    public static CircuitLibrary open() {
        return new CircuitLibrary();
    }

    /** The ids of the shipped circuits, by alphabet. */
    public List<String> ids() {
        return SHELF.ids();
    }

    /** A shipped circuit by its id, or a file's by its path, as it is written. */
    public Result<Source> source(String idOrPath) {
        return SHELF.find(idOrPath);
    }
}
