package understudy.refusal;

import java.util.List;
import java.util.Optional;

/**
 * What came of reading: a value, or all the problems that stand in its way; never both, never neither.
 *
 * @param value    present when there are no problems
 * @param problems by line and column
 */
public record Result<T>(Optional<T> value, List<Refusal> problems) {

    public Result {
        problems = List.copyOf(problems);
        if (value.isPresent() != problems.isEmpty()) {
            throw new IllegalArgumentException("either a value or problems");
        }
    }

    /** The value, if reading it left no problems behind. */
    public static <T> Result<T> of(Optional<T> value, List<Refusal> problems) {
        return value.isPresent() && problems.isEmpty() ? of(value.get()) : refused(problems);
    }

    public static <T> Result<T> of(T value) {
        return new Result<>(Optional.of(value), List.of());
    }

    public static <T> Result<T> refused(List<Refusal> problems) {
        return new Result<>(Optional.empty(), problems);
    }
}
