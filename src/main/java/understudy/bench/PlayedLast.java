package understudy.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import understudy.text.WholeFile;

/**
 * With what a pattern was played last through a rig, as it was written; kept among the user's settings, a line for each pattern.
 *
 * @param pattern its name
 * @param rigs    as given for its outputs
 * @param inputs  likewise
 * @param fit     whether it was scaled to what the rig can give
 * @param speed   at the end
 */
public record PlayedLast(String pattern, List<String> rigs, List<String> inputs, boolean fit, String speed) {

    private static final String FIELD = "\t";
    private static final String ITEM = "\u001f";

    public PlayedLast {
        rigs = List.copyOf(rigs);
        inputs = List.copyOf(inputs);
    }

    /** Empty when nothing is known of it; a line that can't be read is nothing known. */
    public static Optional<PlayedLast> of(String pattern, Path settings) {
        return lines(settings).stream().map(line -> line.split(FIELD, -1)).filter(fields -> fields.length == 5 && fields[0].equals(pattern))
                .map(fields -> new PlayedLast(fields[0], List.of(fields[1].split(ITEM)), List.of(fields[2].split(ITEM)),
                        Boolean.parseBoolean(fields[3]), fields[4])).findFirst();
    }

    /** Keeps it instead of what was kept of this pattern. */
    public void keep(Path settings) throws IOException {
        List<String> lines = new ArrayList<>(lines(settings));
        lines.removeIf(line -> line.startsWith(pattern + FIELD));
        lines.add(String.join(FIELD, pattern, String.join(ITEM, rigs), String.join(ITEM, inputs), Boolean.toString(fit), speed));
        Files.createDirectories(settings);
        WholeFile.write(String.join("\n", lines) + "\n", file(settings));
    }

    private static List<String> lines(Path settings) {
        try {
            return Files.exists(file(settings)) ? Files.readAllLines(file(settings)) : List.of();
        } catch (IOException | UncheckedIOException e) {
            return List.of();
        }
    }

    private static Path file(Path settings) {
        return settings.resolve("played-last.txt");
    }
}
