package understudy.cli;

import java.util.ArrayList;
import java.util.List;

/** Rows of text, each column as wide as its widest cell. */
final class Table {

    private static final String GAP = "  ";

    private final List<List<String>> rows = new ArrayList<>();

    Table row(String... cells) {
        return row(List.of(cells));
    }

    Table row(List<String> cells) {
        rows.add(List.copyOf(cells));
        return this;
    }

    List<String> lines() {
        List<String> lines = new ArrayList<>();
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder();
            for (int column = 0; column < row.size(); column++) {
                String cell = row.get(column);
                line.append(column == 0 ? "" : GAP).append(cell).append(" ".repeat(width(column) - cell.length()));
            }
            lines.add(line.toString().stripTrailing());
        }
        return lines;
    }

    private int width(int column) {
        return rows.stream().filter(row -> row.size() > column).mapToInt(row -> row.get(column).length()).max().orElse(0);
    }
}
