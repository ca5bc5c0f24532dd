package understudy.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.text.Normalizer;
import java.util.function.UnaryOperator;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;

/**
 * Sees to it that no letter is lost in a PDF: what its font can't draw, and what is written from right to left, appears as
 * its Unicode number in brackets, like [U+4E2D].
 */
final class PdfLetters implements UnaryOperator<String> {

    /** Liberation Sans (SIL Open Font License 1.1), which comes with PDFBox: Latin, Greek and Cyrillic letters. */
    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";

    private final CmapLookup glyphs;
    private boolean replaced;

    PdfLetters() {
        try (InputStream in = font(); TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in))) {
            glyphs = font.getUnicodeCmapLookup();
        } catch (IOException e) {
            throw new UncheckedIOException("the program is not whole: its font can't be read", e);
        }
    }

    private static InputStream font() {
        return PDDocument.class.getResourceAsStream(FONT);
    }

    /** The font as a file of its own, since a drawing takes it from nowhere else; whoever asks for it removes it. */
    static Path fontFile() throws IOException {
        Path file = Files.createTempFile("understudy-font", ".ttf");
        try (InputStream in = font()) {
            Files.copy(in, file, StandardCopyOption.REPLACE_EXISTING);
        }
        return file;
    }

    /** Whether anything had to be replaced so far. */
    boolean replaced() {
        return replaced;
    }

    @Override
    public String apply(String words) {
        StringBuilder drawable = new StringBuilder();
        Normalizer.normalize(words, Normalizer.Form.NFC).codePoints().forEach(letter -> {
            if (canDraw(letter)) {
                drawable.appendCodePoint(letter);
            } else {
                replaced = true;
                drawable.append(String.format("[U+%04X]", letter));
            }
        });
        return drawable.toString();
    }

    private boolean canDraw(int letter) {
        return Character.isWhitespace(letter) || glyphs.getGlyphId(letter) != 0 && !fromRightToLeft(letter);
    }

    private static boolean fromRightToLeft(int letter) {
        return switch (Character.getDirectionality(letter)) {
            case Character.DIRECTIONALITY_RIGHT_TO_LEFT, Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC -> true;
            default -> false;
        };
    }
}
