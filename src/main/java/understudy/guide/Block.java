package understudy.guide;

import java.util.List;

/** A piece of a page as plain text, from top to bottom, for whatever shows it without HTML. */
public sealed interface Block {

    /** @param level 1 for the page's own title, 2 below it */
    record Heading(int level, String text) implements Block {}

    /** A paragraph. */
    record Text(String text) implements Block {}

    /** A paragraph that must not be overlooked. */
    record Warning(String text) implements Block {}

    /** One entry of a list; {@code marker} is a dash, or a number with a full stop. */
    record Item(String marker, String text) implements Block {}

    /** Lines to be shown as they stand, such as commands to type. */
    record Verbatim(List<String> lines) implements Block {
        public Verbatim {
            lines = List.copyOf(lines);
        }
    }

    /** All rows as long as the header. */
    record Rows(List<String> header, List<List<String>> rows) implements Block {
        public Rows {
            header = List.copyOf(header);
            rows = rows.stream().map(List::copyOf).toList();
        }
    }

    /** A drawing in plain characters, with a line that tells what it shows. */
    record Drawing(String shows, List<String> lines) implements Block {
        public Drawing {
            lines = List.copyOf(lines);
        }
    }
}
