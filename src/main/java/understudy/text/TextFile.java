package understudy.text;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

/** A file on its way to its text: present, readable, not too big, and UTF-8. */
public final class TextFile {
    public static final int MOST_CHARACTERS = 256 * 1024;
    private static final int MOST_BYTES = 4 * MOST_CHARACTERS;

    private TextFile() {}

    public static Optional<String> read(String file, Problems problems) {
        try {
            Path path = Path.of(file);
            if (Files.isDirectory(path)) {
                problems.at(1, 1, "this is a folder", "name a file in it");
                return Optional.empty();
            }
            try (InputStream in = Files.newInputStream(path)) {
                return decode(in.readNBytes(MOST_BYTES + 1), problems);
            }
        } catch (NoSuchFileException | InvalidPathException e) {
            problems.at(1, 1, "there is no such file", "look at how its name and folder are spelled");
        } catch (AccessDeniedException e) {
            problems.at(1, 1, "the file may not be read", "give yourself the right to read it");
        } catch (IOException e) {
            problems.at(1, 1, "the file can't be read: " + e.getMessage(), "look at the disk it is on");
        }
        return Optional.empty();
    }

    public static Optional<String> decode(byte[] bytes, Problems problems) {
        if (bytes.length > MOST_BYTES) {
            tooBig(problems);
            return Optional.empty();
        }
        CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT).onUnmappableCharacter(CodingErrorAction.REPORT);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        if (decoder.decode(ByteBuffer.wrap(bytes), out, true).isError()) {
            String before = out.flip().toString();
            place(before, before.length(), problems, "the file is not UTF-8 text from here on",
                    "save it with the encoding UTF-8");
            return Optional.empty();
        }
        return Optional.of(out.flip().toString());
    }

    public static void tooBig(Problems problems) {
        problems.at(1, 1, "the file is too big", "it may have at most " + MOST_CHARACTERS + " characters");
    }

    /** A problem at an index into the text. */
    public static void place(String text, int index, Problems problems, String wrong, String right) {
        String before = text.substring(0, index);
        int line = (int) before.chars().filter(c -> c == '\n').count() + 1;
        String lastLine = before.substring(before.lastIndexOf('\n') + 1);
        problems.at(line, lastLine.codePointCount(0, lastLine.length()) + 1, wrong, right);
    }
}
