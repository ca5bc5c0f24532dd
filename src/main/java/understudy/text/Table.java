package understudy.text;

import java.util.ArrayList;
import java.util.List;

/** Rows of text, each column as wide as its widest cell. */
public final class Table {

    private static final String GAP = "  ";
    /** Less is no room for a paragraph. */
    private static final int LEAST_ROOM = 16;

    private final List<List<String>> rows = new ArrayList<>();
    private final List<Integer> widths = new ArrayList<>();

    public Table row(String... cells) {
        return row(List.of(cells));
    }

    public Table row(List<String> cells) {
        rows.add(List.copyOf(cells));
        for (int column = 0; column < cells.size(); column++) {
            if (column == widths.size()) {
                widths.add(0);
            }
            widths.set(column, Math.max(widths.get(column), cells.get(column).length()));
        }
        return this;
    }

    /** What is too wide for the screen goes on below, in the last column. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            int last = row.size() - 1;
            for (int column = 0; column < last; column++) {
                String cell = row.get(column);
                line.append(cell).append(" ".repeat(widths.get(column) - cell.length())).append(GAP);
            }
            lines.addAll(last < 0 ? List.of("") : ended(line.toString(), row.get(last)));
        }
        return lines;
    }

    /** Only words are broken off; blanks at the beginning of a cell, as of a table's first column, stay. */
    private static List<String> ended(String line, String cell) {
        if (line.length() + cell.length() <= Paragraph.width() || !cell.strip().contains(" ")
                || line.length() + LEAST_ROOM > Paragraph.width()) {
            return List.of((line + cell).stripTrailing());
        }
        String before = line + cell.substring(0, cell.length() - cell.stripLeading().length());
        return Paragraph.lines(before, " ".repeat(before.length()), cell);
    }
}
