package understudy.cli;

import java.util.ArrayList;
import java.util.List;
import understudy.guide.Block;
import understudy.guide.Page;

/** A page of the guide as lines for a terminal. */
final class PageText {

    private static final String BOLD = "\033[1m";
    private static final String PLAIN = "\033[0m";
    private static final String MARGIN = "    ";

    private final List<String> lines = new ArrayList<>();
    private final boolean colour;

    private PageText(boolean colour) {
        this.colour = colour;
    }

    /** @param colour whether headings and warnings may be made bold */
    static List<String> lines(Page page, boolean colour) {
        PageText text = new PageText(colour);
        Block before = null;
        for (Block block : page.blocks()) {
            if (before != null && !(before instanceof Block.Item && block instanceof Block.Item)) {
                text.lines.add("");
            }
            text.add(block);
            before = block;
        }
        return text.lines;
    }

    private void add(Block block) {
        if (block instanceof Block.Heading heading) {
            List<String> words = Paragraph.lines(heading.text());
            int width = words.stream().mapToInt(String::length).max().orElse(0);
            words.forEach(this::strong);
            strong((heading.level() == 1 ? "=" : "-").repeat(width));
        } else if (block instanceof Block.Text text) {
            lines.addAll(Paragraph.lines(text.text()));
        } else if (block instanceof Block.Warning warning) {
            Paragraph.lines("  ! ", "  ! ", warning.text()).forEach(this::strong);
        } else if (block instanceof Block.Item item) {
            String first = "  " + item.marker() + " ";
            lines.addAll(Paragraph.lines(first, " ".repeat(first.length()), item.text()));
        } else if (block instanceof Block.Verbatim verbatim) {
            verbatim.lines().forEach(line -> lines.add(MARGIN + line));
        } else if (block instanceof Block.Drawing drawing) {
            lines.addAll(Paragraph.lines(drawing.shows() + ":"));
            lines.add("");
            drawing.lines().forEach(line -> lines.add((MARGIN + line).stripTrailing()));
        } else if (block instanceof Block.Rows rows) {
            table(rows);
        }
    }

    private void strong(String line) {
        lines.add(colour ? BOLD + line + PLAIN : line);
    }

    /** Side by side where that fits the screen, else each row by itself: its first cell, and the others below with their names. */
    private void table(Block.Rows rows) {
        Table table = new Table().row(rows.header());
        rows.rows().forEach(table::row);
        List<String> side = table.lines().stream().map(line -> "  " + line).toList();
        if (side.stream().allMatch(line -> line.length() <= Paragraph.WIDTH)) {
            strong(side.get(0));
            lines.addAll(side.subList(1, side.size()));
            return;
        }
        for (List<String> row : rows.rows()) {
            Paragraph.lines("  ", "  ", row.get(0)).forEach(this::strong);
            for (int column = 1; column < row.size(); column++) {
                lines.addAll(Paragraph.lines(MARGIN + rows.header().get(column) + ": ", MARGIN + "  ", row.get(column)));
            }
        }
    }
}
