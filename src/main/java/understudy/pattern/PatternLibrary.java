package understudy.pattern;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLConnection;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import understudy.text.Problems;
import understudy.text.Result;
import understudy.text.TextFile;
import understudy.text.Nearest;

/**
 * The shipped patterns, which travel inside the jar, and patterns in files of the user's own. The jar's own folder is
 * the list of what is shipped, so no index can fall behind it.
 */
public final class PatternLibrary {
    private static final String FOLDER = "/patterns/";
    /** A file that is always in the folder, by which the folder is found. */
    private static final String LANDMARK = "pattern.schema.json";

    /** What an id looks like; anything else is not looked up as a part of the program. */
    private static final String ID = "[a-z0-9-]+";

    private PatternLibrary() {}

    /** The shipped patterns. */
    public static PatternLibrary open() {
        return new PatternLibrary();
    }

    /** The ids of the shipped patterns, by alphabet; throws UncheckedIOException if the program itself can't be read. */
    public List<String> ids() {
        URL landmark = PatternLibrary.class.getResource(FOLDER + LANDMARK);
        if (landmark == null) {
            throw new IllegalStateException("the program's own folder of patterns is missing");
        }
        try {
            URLConnection connection = landmark.openConnection();
            if (connection instanceof JarURLConnection inJar) {
                URI jar = inJar.getJarFileURL().toURI();
                try (FileSystem files = FileSystems.newFileSystem(Path.of(jar))) {
                    return idsIn(files.getPath(FOLDER));
                }
            }
            return idsIn(Path.of(landmark.toURI()).getParent());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<String> idsIn(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.map(Path::toString).filter(file -> file.endsWith(".yaml")).map(PatternReader::id).sorted().toList();
        }
    }

    /** The text of a shipped pattern, without looking through all of them. */
    private static Optional<byte[]> shipped(String id) {
        if (!id.matches(ID)) {
            return Optional.empty();
        }
        try (InputStream file = PatternLibrary.class.getResourceAsStream(FOLDER + id + ".yaml")) {
            return file == null ? Optional.empty() : Optional.of(file.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A shipped pattern by its id, or a file's by its path, which has a folder or the ending .yaml or .yml in it. */
    public Result<Pattern> find(String idOrPath) {
        Optional<byte[]> bytes = shipped(idOrPath);
        if (bytes.isPresent()) {
            return PatternReader.read(idOrPath + ".yaml", bytes.get());
        }
        Problems problems = new Problems(idOrPath);
        if (idOrPath.matches("(?s).*[/\\\\].*|.*\\.ya?ml")) {
            Optional<String> text = TextFile.read(idOrPath, problems);
            return text.isPresent() ? PatternReader.read(idOrPath, text.get()) : Result.refused(problems.inOrder());
        }
        problems.at(1, 1, "there is no pattern of this name", advice(idOrPath));
        return Result.refused(problems.inOrder());
    }

    private String advice(String typed) {
        List<String> ids = ids();
        List<String> near = Nearest.to(typed, ids);
        if (!near.isEmpty()) {
            return "did you mean " + String.join(" or ", near.subList(0, Math.min(3, near.size()))) + "?";
        }
        List<String> begun = ids.stream().filter(id -> !typed.isBlank() && id.contains(typed)).toList();
        return (begun.isEmpty() ? "shipped are " + String.join(", ", ids) : "did you mean " + String.join(" or ", begun)
                + "?") + " (a file of your own is named with its ending, like my-wheel.yaml)";
    }
}
