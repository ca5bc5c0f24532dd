package understudy.cli.signal;

import java.util.List;
import understudy.pattern.Pattern;
import understudy.pattern.PatternLibrary;
import understudy.refusal.Refused;
import understudy.refusal.Result;

/** The pattern library, with its refusals in the form that commands throw. */
public final class Patterns {

    private final PatternLibrary library = PatternLibrary.open();

    /** All that are shipped, by id. */
    public List<Pattern> shipped() {
        return library.ids().stream().map(this::find).toList();
    }

    /** A shipped pattern by its id, or one in a file; throws {@link Refused} with all that is wrong with it. */
    public Pattern find(String idOrFile) {
        return value(read(idOrFile));
    }

    public Result<Pattern> read(String idOrFile) {
        return library.find(idOrFile);
    }

    public static <T> T value(Result<T> result) {
        return result.value().orElseThrow(() -> new Refused(result.problems()));
    }
}
