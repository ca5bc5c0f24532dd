package understudy.cli;

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
 * read: a caution whose words change is shown again.
 */
final class Agreement {

    private final Path file;

    Agreement(UserFolders folders) {
        file = folders.settings().resolve("cautions-read.txt");
    }

    Path file() {
        return file;
    }

    /** Those among {@code hazards} that were not said yes to; all when the file can't be read. */
    List<Hazard> open(List<Hazard> hazards) {
        Set<String> read;
        try {
            read = Files.readAllLines(file).stream().map(line -> line.replaceAll(" on .*", "")).collect(Collectors.toSet());
        } catch (IOException | UncheckedIOException e) {
            return hazards;
        }
        return hazards.stream().filter(hazard -> !read.contains(entry(hazard))).toList();
    }

    /** Keeps a yes. */
    void keep(List<Hazard> hazards, LocalDate day) throws IOException {
        Files.createDirectories(file.getParent());
        String lines = hazards.stream().map(hazard -> entry(hazard) + " on " + day + "\n").collect(Collectors.joining());
        Files.writeString(file, lines, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }

    private static String entry(Hazard hazard) {
        String words = String.join("\n", hazard.title(), hazard.whatCanHappen(), hazard.whatToDo());
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(words.getBytes(StandardCharsets.UTF_8));
            return hazard.key() + " " + HexFormat.of().formatHex(digest, 0, 8);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
