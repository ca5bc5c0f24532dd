package understudy.text;

import java.util.ArrayList;
import java.util.List;

/** Breaks running text into lines as wide as the screen. */
public final class Paragraph {

    /** Where nobody knows better: in a file, through a pipe. */
    public static final int USUAL_WIDTH = 80;
    private static final int LEAST_WIDTH = 60;
    /** Longer lines are hard to read. */
    private static final int MOST_WIDTH = 100;

    private static volatile int width = USUAL_WIDTH;

    private Paragraph() {}

    /** Sets how many characters fit on the screen, once, before anything is laid out; held to 60 to 100. */
    public static void fit(int columns) {
        width = Math.max(LEAST_WIDTH, Math.min(MOST_WIDTH, columns));
    }

    /** Characters of a line. */
    public static int width() {
        return width;
    }

    /**
     * Lines of at most {@link #width} characters, the first behind {@code first}, the others behind {@code others}.
     * A word longer than that gets a line of its own.
     */
    public static List<String> lines(String first, String others, String text) {
        return lines(width, first, others, text);
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
