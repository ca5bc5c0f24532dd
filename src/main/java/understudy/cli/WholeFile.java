package understudy.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes files whole or not at all. */
final class WholeFile {

    private WholeFile() {}

    /** In UTF-8; a file of that name is replaced once the new one is complete. */
    static void write(String text, Path file) throws IOException {
        Path unfinished = file.resolveSibling("." + file.getFileName() + ".unfinished-" + ProcessHandle.current().pid());
        try {
            Files.writeString(unfinished, text);
            Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(unfinished);
        }
    }
}
