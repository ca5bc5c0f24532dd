package understudy.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import understudy.guide.Block;
import understudy.guide.Page;
import understudy.text.Paragraph;
import understudy.text.Table;

/** A page of the guide as lines for a terminal. */
public final class PageText {

    private static final String BOLD = "\033[1m";
    private static final String PLAIN = "\033[0m";
    private static final String MARGIN = "    ";

    private final List<String> lines = new ArrayList<>();
    private final boolean colour;

    private PageText(boolean colour) {
        this.colour = colour;
    }

    /** @param colour whether headings and warnings may be made bold */
    public static List<String> lines(Page page, boolean colour) {
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

    private void table(Block.Rows rows) {
        List<List<String>> all = new ArrayList<>(List.of(rows.header()));
        all.addAll(rows.rows());
        int[] widths = widths(all);
        Table table = new Table();
        int headerLines = 0;
        for (List<String> row : all) {
            List<List<String>> cells = new ArrayList<>();
            for (int column = 0; column < row.size(); column++) {
                cells.add(Paragraph.lines(widths[column], "", "", row.get(column)));
            }
            int height = cells.stream().mapToInt(List::size).max().orElse(0);
            for (int line = 0; line < height; line++) {
                int at = line;
                table.row(cells.stream().map(cell -> at < cell.size() ? cell.get(at) : "").toList());
            }
            headerLines = headerLines == 0 ? height : headerLines;
        }
        List<String> drawn = table.lines().stream().map(line -> "  " + line).toList();
        drawn.subList(0, headerLines).forEach(this::strong);
        lines.addAll(drawn.subList(headerLines, drawn.size()));
    }

    /** As wide as the cells, the widest columns narrowed until all fit the screen. */
    private static int[] widths(List<List<String>> rows) {
        int[] widths = new int[rows.get(0).size()];
        for (List<String> row : rows) {
            for (int column = 0; column < widths.length; column++) {
                widths[column] = Math.max(widths[column], row.get(column).length());
            }
        }
        while (Arrays.stream(widths).sum() + 2 * widths.length > Paragraph.width()) {
            int widest = 0;
            for (int column = 1; column < widths.length; column++) {
                widest = widths[column] > widths[widest] ? column : widest;
            }
            widths[widest]--;
        }
        return widths;
    }
}
