package understudy.report;

import java.util.ArrayList;
import java.util.List;

/**
 * How wide a text is, near enough to break it into lines where no font can be asked. Widths are rounded up from those of
 * common sans-serif fonts, so that lines end a little early.
 */
final class TextWidth {

    private TextWidth() {}

    /** Lines of at most so many ems; a word that is longer is cut. */
    static List<String> wrap(String words, double ems) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : words.strip().split("\\s+")) {
            if (!line.isEmpty() && of(line + " " + word) <= ems) {
                line += " " + word;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (of(line) > ems) {
                int fits = fits(line, ems);
                lines.add(line.substring(0, fits));
                line = line.substring(fits);
            }
        }
        lines.add(line);
        return lines;
    }

    private static int fits(String word, double ems) {
        int end = word.offsetByCodePoints(0, 1);
        while (end < word.length() && of(word.substring(0, word.offsetByCodePoints(end, 1))) <= ems) {
            end = word.offsetByCodePoints(end, 1);
        }
        return end;
    }

    static double of(String words) {
        return words.codePoints().mapToDouble(TextWidth::of).sum();
    }

    private static double of(int letter) {
        if (letter > 0xFF || "mwMW@%\u00c6\u00e6".indexOf(letter) >= 0) {
            return 1.1;
        } else if ("iljftI.,:;'|!()[] /\\".indexOf(letter) >= 0) {
            return 0.34;
        }
        return Character.isUpperCase(letter) || letter == '&' ? 0.8 : 0.62;
    }
}
