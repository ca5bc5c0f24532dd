package understudy.text;

import java.util.ArrayList;
import java.util.List;

/** Breaks running text into lines. */
public final class Paragraph {

    public static final int WIDTH = 80;

    private Paragraph() {}

    /**
     * Lines of at most {@value #WIDTH} characters, the first behind {@code first}, the others behind {@code others}.
     * A word longer than that gets a line of its own.
     */
    public static List<String> lines(String first, String others, String text) {
        return lines(WIDTH, first, others, text);
    }

    /** The same on a screen of that width. */
    public static List<String> lines(int width, String first, String others, String text) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(first);
        boolean empty = true;
        for (String word : text.strip().split("\\s+")) {
            if (!empty && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line = new StringBuilder(others);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
        return lines;
    }

    public static List<String> lines(String text) {
        return lines("", "", text);
    }
}
