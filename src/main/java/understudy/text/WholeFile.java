package understudy.text;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes a file whole or not at all, with the mode that the user's files have. */
public final class WholeFile {

    private WholeFile() {}

    /** What goes into a file. */
    public interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /** On the disk when it returns; when it throws, what was in the file before is still there. */
    public static void write(String text, Path file) throws IOException {
        write(out -> out.write(text.getBytes(StandardCharsets.UTF_8)), file);
    }

    /** Likewise; the content must not close the stream. */
    public static void write(Content content, Path file) throws IOException {
        // beside its target, so that the move is one step; named by process, so that two runs don't meet
        Path unfinished = file.resolveSibling("." + file.getFileName() + ".unfinished-" + ProcessHandle.current().pid());
        try {
            try (FileChannel channel = FileChannel.open(unfinished, StandardOpenOption.CREATE, StandardOpenOption.WRITE,
                    StandardOpenOption.TRUNCATE_EXISTING)) {
                OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel));
                content.writeTo(out);
                out.flush();
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
