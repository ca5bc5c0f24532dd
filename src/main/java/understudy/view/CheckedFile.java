package understudy.view;

import java.util.List;
import understudy.refusal.Location;
import understudy.refusal.Refusal;

/** What is wrong with a file, for scripts; nothing where it is fine. */
public record CheckedFile(String file, List<Problem> problems) {

    /** A place in the file, and what is wrong there. */
    public record Problem(int line, int column, String wrong, String right) {

        private static Problem of(Refusal refusal) {
            Location.Line at = refusal.location() instanceof Location.Line line ? line : new Location.Line(refusal.location(), 1, 1);
            return new Problem(at.line(), at.column(), refusal.wrong(), refusal.right());
        }
    }

    public static CheckedFile of(String file, List<Refusal> problems) {
        return new CheckedFile(file, problems.stream().map(Problem::of).toList());
    }
}
