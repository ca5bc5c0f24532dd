package understudy.cli;

import java.util.List;
import understudy.pattern.Pattern;
import understudy.pattern.PatternLibrary;
import understudy.refusal.Refused;
import understudy.refusal.Result;

/** The pattern library, with its refusals in the form that commands throw. */
final class Patterns {

    private final PatternLibrary library = PatternLibrary.open();

    /** All that are shipped, by id. */
    List<Pattern> shipped() {
        return library.ids().stream().map(this::find).toList();
    }

    /** A shipped pattern by its id, or one in a file; throws {@link Refused} with all that is wrong with it. */
    Pattern find(String idOrFile) {
        return value(read(idOrFile));
    }

    Result<Pattern> read(String idOrFile) {
        return library.find(idOrFile);
    }

    static <T> T value(Result<T> result) {
        return result.value().orElseThrow(() -> new Refused(result.problems()));
    }
}
