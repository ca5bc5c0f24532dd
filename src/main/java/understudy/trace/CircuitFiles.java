package understudy.trace;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;
import understudy.pattern.PatternLibrary;
import understudy.refusal.Refused;
import understudy.refusal.Result;
import understudy.text.Shelf;
import understudy.text.Source;

/** CircuitFiles with the patterns that stand in for their sensors. */
public final class CircuitFiles {

    /** What tells a circuit's file from a pattern's. */
    private static final Pattern PATH = Pattern.compile("(?m)^path\\s*:");

    private CircuitFiles() {}

    /** Whether a text is a circuit's, be it right or wrong. */
    public static boolean is(Source source) {
        return PATH.matcher(source.text()).find();
    }

    /** Whether a name is that of a shipped circuit, or of a file that holds one. */
    public static boolean is(String idOrFile) {
        return CircuitLibrary.open().source(idOrFile).value().filter(CircuitFiles::is).isPresent();
    }

    /** Throws {@link Refused} with all that is wrong with the circuit, or its pattern. */
    public static Job.Subject find(String idOrFile) {
        Source source = value(CircuitLibrary.open().source(idOrFile));
        Circuit circuit = value(CircuitReader.read(source));
        Job.Subject kept = new Job.Subject(source,
                value(PatternLibrary.open().source(beside(source, circuit.patternName()))));
        read(kept);
        return kept;
    }

    public static Subjects.Subject read(Job.Subject kept) {
        return Subjects.Subject.of(kept);
    }

    /** The circuit that proves the method, if this one names one. */
    public static Optional<Job.Subject> reference(Job.Subject suspect) {
        return read(suspect).circuit().reference().map(name -> find(beside(suspect.circuit(), name)));
    }

    /** A file that another one names lies beside it. */
    private static String beside(Source source, String name) {
        if (!Shelf.isFileName(name) || Path.of(name).isAbsolute()) {
            return name;
        }
        Path beside = Path.of(source.fileName()).resolveSibling(name);
        return Files.exists(beside) || !Files.exists(Path.of(name)) ? beside.toString() : name;
    }

    private static <T> T value(Result<T> result) {
        return result.value().orElseThrow(() -> new Refused(result.problems()));
    }
}
