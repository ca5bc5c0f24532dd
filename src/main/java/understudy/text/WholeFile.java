package understudy.text;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes text into a file, whole or not at all. */
public final class WholeFile {

    private WholeFile() {}

    /** On the disk when it returns; when it throws, what was in the file before is still there. */
    public static void write(String text, Path file) throws IOException {
        Path unfinished = file.resolveSibling("." + file.getFileName() + ".unfinished-" + ProcessHandle.current().pid());
        try {
            try (FileChannel channel = FileChannel.open(unfinished, StandardOpenOption.CREATE, StandardOpenOption.WRITE,
                    StandardOpenOption.TRUNCATE_EXISTING)) {
                ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
                while (bytes.hasRemaining()) {
                    channel.write(bytes);
                }
                channel.force(true);
            }
            Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(unfinished);
        }
    }

    /** Why it could not be written, without the name of the unfinished file. */
    public static String reason(IOException e) {
        if (e instanceof NoSuchFileException) {
            return "its folder is not there";
        } else if (e instanceof AccessDeniedException) {
            return "access denied";
        } else if (e instanceof FileSystemException system && system.getReason() != null) {
            return system.getReason();
        }
        return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    }
}
