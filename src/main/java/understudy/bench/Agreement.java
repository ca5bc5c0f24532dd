package understudy.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import understudy.pattern.Hazard;

/**
 * Which cautions this user has read and said yes to, kept in a file of the user's. A yes holds for the words that were
 * read: a caution whose words change is shown again. A yes in a rehearsal does not hold for a signal that leaves the machine.
 */
public final class Agreement {

    private final Path file;

    /** @param settings the user's folder for settings; need not exist */
    public Agreement(Path settings) {
        file = settings.resolve("cautions-read.txt");
    }

    public Path file() {
        return file;
    }

    /** Those among {@code hazards} that were not said yes to for this; all when the file can't be read. */
    List<Hazard> open(List<Hazard> hazards, boolean leaves) {
        Set<String> read;
        try {
            read = Files.readAllLines(file).stream().map(line -> line.replaceAll(" on .*", "")).collect(Collectors.toSet());
        } catch (IOException | UncheckedIOException e) {
            return hazards;
        }
        return hazards.stream().filter(hazard -> !read.contains(entry(hazard, true)) && (leaves || !read.contains(entry(hazard, false))))
                .toList();
    }

    /** Keeps a yes. */
    void keep(List<Hazard> hazards, boolean leaves, LocalDate day) throws IOException {
        Files.createDirectories(file.getParent());
        String lines = hazards.stream().map(hazard -> entry(hazard, leaves) + " on " + day + "\n").collect(Collectors.joining());
        Files.writeString(file, lines, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    /** An entry without "output" may come from a rehearsal, so it holds for rehearsals only. */
    private static String entry(Hazard hazard, boolean leaves) {
        String words = String.join("\n", hazard.title(), hazard.whatCanHappen(), hazard.whatToDo());
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(words.getBytes(StandardCharsets.UTF_8));
            return hazard.key() + " " + HexFormat.of().formatHex(digest, 0, 8) + (leaves ? " output" : "");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
