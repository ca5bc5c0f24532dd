package understudy.pattern;

import java.io.IOException;
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
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * The shipped patterns, which travel inside the jar, and patterns in files of the user's own. The jar's own folder is
 * the list of what is shipped, so no index can fall behind it.
 */
public final class PatternLibrary {
    private static final String FOLDER = "/patterns/";
    /** A file that is always in the folder, by which the folder is found. */
    private static final String LANDMARK = "pattern.schema.json";

    private final Map<String, byte[]> shipped;

    private PatternLibrary(Map<String, byte[]> shipped) {
        this.shipped = shipped;
    }

    /** Opens the shipped patterns; throws UncheckedIOException if the program itself can't be read. */
    public static PatternLibrary open() {
        URL landmark = PatternLibrary.class.getResource(FOLDER + LANDMARK);
        if (landmark == null) {
            throw new IllegalStateException("the program's own folder of patterns is missing");
        }
        try {
            URLConnection connection = landmark.openConnection();
            if (connection instanceof JarURLConnection inJar) {
                URI jar = inJar.getJarFileURL().toURI();
                try (FileSystem files = FileSystems.newFileSystem(Path.of(jar))) {
                    return new PatternLibrary(load(files.getPath(FOLDER)));
                }
            }
            return new PatternLibrary(load(Path.of(landmark.toURI()).getParent()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Map<String, byte[]> load(Path folder) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> entries = Files.list(folder)) {
            for (Path file : entries.filter(entry -> entry.toString().endsWith(".yaml")).toList()) {
                files.put(PatternReader.id(file.toString()), Files.readAllBytes(file));
            }
        }
        return files;
    }

    /** The ids of the shipped patterns, by alphabet. */
    public List<String> ids() {
        return List.copyOf(shipped.keySet());
    }

    /** A shipped pattern by its id, or a file's by its path, which has a folder or the ending .yaml or .yml in it. */
    public Result<Pattern> find(String idOrPath) {
        byte[] bytes = shipped.get(idOrPath);
        if (bytes != null) {
            return PatternReader.read(idOrPath + ".yaml", bytes);
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
        List<String> near = Nearest.to(typed, shipped.keySet());
        if (!near.isEmpty()) {
            return "did you mean " + String.join(" or ", near.subList(0, Math.min(3, near.size()))) + "?";
        }
        List<String> begun = shipped.keySet().stream().filter(id -> !typed.isBlank() && id.contains(typed)).toList();
        return (begun.isEmpty() ? "shipped are " + String.join(", ", ids()) : "did you mean " + String.join(" or ", begun)
                + "?") + " (a file of your own is named with its ending, like my-wheel.yaml)";
    }
}
