package understudy.text;

import understudy.refusal.Result;
import understudy.refusal.Refusal;
import understudy.refusal.Location;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URL;
import java.net.URLConnection;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The files of one kind that are shipped inside the jar, and those of the user's own. The jar's own folder is the list of
 * what is shipped, so no index can fall behind it.
 *
 * @param folder   in the jar, with a slash at both ends
 * @param landmark a file that is always in the folder, by which the folder is found
 * @param what     what such a file describes, without an article
 * @param example  a name that a file of the user's own could have
 */
public record Shelf(String folder, String landmark, String what, String example) {

    /** What an id looks like; anything else is not looked up as a part of the program. */
    private static final String ID = "[a-z0-9-]+";
    private static final String FILE_NAME = "(?s).*[/\\\\].*|.*\\.ya?ml";

    /** The ids of what is shipped, by alphabet; throws UncheckedIOException if the program itself can't be read. */
    public List<String> ids() {
        URL found = Shelf.class.getResource(folder + landmark);
        if (found == null) {
            throw new IllegalStateException("the program's own folder " + folder + " is missing");
        }
        try {
            URLConnection connection = found.openConnection();
            if (connection instanceof JarURLConnection inJar) {
                URI jar = inJar.getJarFileURL().toURI();
                try (FileSystem files = FileSystems.newFileSystem(Path.of(jar))) {
                    return idsIn(files.getPath(folder));
                }
            }
            return idsIn(Path.of(found.toURI()).getParent());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<String> idsIn(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.map(Path::toString).filter(file -> file.endsWith(".yaml"))
                    .map(file -> new Source(file, "").id()).sorted().toList();
        }
    }

    /** The bytes of a shipped file, without looking through all of them. */
    private Optional<byte[]> shipped(String id) {
        if (!id.matches(ID)) {
            return Optional.empty();
        }
        try (InputStream file = Shelf.class.getResourceAsStream(folder + id + ".yaml")) {
            return file == null ? Optional.empty() : Optional.of(file.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A shipped file by its id, or another by its path, which has a folder or the ending .yaml or .yml in it. */
    public Result<Source> find(String idOrPath) {
        Optional<byte[]> bytes = shipped(idOrPath);
        if (bytes.isPresent()) {
            return Result.of(new Source(idOrPath + ".yaml", new String(bytes.get(), StandardCharsets.UTF_8)));
        }
        if (isFileName(idOrPath)) {
            Problems problems = new Problems(idOrPath);
            return Result.of(TextFile.read(idOrPath, problems).map(text -> new Source(idOrPath, text)), problems.inOrder());
        }
        return Result.refused(List.of(new Refusal(
                Location.named(idOrPath), "there is no " + what + " of this name", advice(idOrPath))));
    }

    /** Whether a name is that of a file of the user's own. */
    public static boolean isFileName(String idOrPath) {
        return idOrPath.matches(FILE_NAME);
    }

    private String advice(String typed) {
        List<String> ids = ids();
        List<String> near = Nearest.to(typed, ids);
        if (!near.isEmpty()) {
            return "did you mean " + String.join(" or ", near.subList(0, Math.min(3, near.size()))) + "?";
        }
        List<String> begun = ids.stream().filter(id -> !typed.isBlank() && id.contains(typed)).toList();
        return (begun.isEmpty() ? "shipped are " + String.join(", ", ids) : "did you mean " + String.join(" or ", begun)
                + "?") + " (a file of your own is named with its ending, like " + example + ")";
    }
}
