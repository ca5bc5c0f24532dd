package understudy.text;

import java.util.ArrayList;
import java.util.List;

/** Rows of text, each column as wide as its widest cell. */
public final class Table {

    private static final String GAP = "  ";

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

    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int column = 0; column < row.size(); column++) {
                String cell = row.get(column);
                line.append(column == 0 ? "" : GAP).append(cell).append(" ".repeat(widths.get(column) - cell.length()));
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }
}
