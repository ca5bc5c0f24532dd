package understudy.pattern;

import java.util.List;
import understudy.refusal.Result;
import understudy.text.Shelf;
import understudy.text.Source;

/** The shipped patterns, which travel inside the jar, and patterns in files of the user's own. */
public final class PatternLibrary {
    private static final Shelf SHELF = new Shelf("/patterns/", "pattern.schema.json", "pattern", "my-wheel.yaml");

    private PatternLibrary() {}

    public static PatternLibrary open() {
        return new PatternLibrary();
    }

    /** The ids of the shipped patterns, by alphabet; throws UncheckedIOException if the program itself can't be read. */
    public List<String> ids() {
        return SHELF.ids();
    }

    /** A shipped pattern by its id, or a file's by its path, which has a folder or the ending .yaml or .yml in it. */
    public Result<Pattern> find(String idOrPath) {
        Result<Source> source = source(idOrPath);
        return source.value().map(PatternReader::read).orElseGet(() -> Result.refused(source.problems()));
    }

    /** The same, as it is written. */
    public Result<Source> source(String idOrPath) {
        return SHELF.find(idOrPath);
    }
}
