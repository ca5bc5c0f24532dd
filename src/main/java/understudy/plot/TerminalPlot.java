package understudy.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Draws a plot with characters: dots of braille where the terminal has them, plain ASCII elsewhere. */
public final class TerminalPlot {

    /** Of the volts beside the panels, with a space behind them. */
    private static final int MARGIN_COLUMNS = 8;
    private static final int LEAST_COLUMNS = 40;

    private TerminalPlot() {}

    /**
     * @param columns width of the whole drawing in characters; less than 40 is taken as 40
     * @param rows    height of the drawn part of each panel in characters, at least 1
     * @param braille whether the terminal shows braille characters
     * @return the lines, without line ends
     */
    public static List<String> draw(LinePlot plot, int columns, int rows, boolean braille) {
        int width = Math.max(LEAST_COLUMNS, columns) - MARGIN_COLUMNS;
        List<String> lines = new ArrayList<>();
        lines.add(plot.title());
        for (LinePlot.Panel panel : plot.panels()) {
            lines.add("");
            lines.add(" ".repeat(MARGIN_COLUMNS) + panel.name() + ", " + panel.yLabel());
            lines.addAll(panel(plot, panel, width, rows, braille));
        }
        lines.addAll(axis(plot, width));
        return lines;
    }

    private static List<String> panel(LinePlot plot, LinePlot.Panel panel, int width, int rows, boolean braille) {
        int dotColumns = braille ? 2 : 1;
        int dotRows = braille ? 4 : 3;
        double least = panel.leastY();
        double most = panel.mostY();
        Raster raster = new Raster(
                panel.points(), plot.fromX(), plot.toX(), least, most, width * dotColumns, rows * dotRows);
        List<String> lines = new ArrayList<>();
        for (int row = rows - 1; row >= 0; row--) {
            StringBuilder line = new StringBuilder();
            for (int column = 0; column < width; column++) {
                line.append(braille ? brailleCell(raster, column, row) : asciiCell(raster, column, row));
            }
            String label = row == rows - 1 ? number(most) : row == 0 ? number(least) : "";
            lines.add((label(label) + line).stripTrailing());
        }
        return lines;
    }

    /** Bits of the dots as Unicode numbers them (The Unicode Standard, Braille Patterns), column by column from the top. */
    private static final int[][] BRAILLE_BITS = {{0x01, 0x02, 0x04, 0x40}, {0x08, 0x10, 0x20, 0x80}};

    private static char brailleCell(Raster raster, int column, int row) {
        int bits = 0;
        for (int right = 0; right < 2; right++) {
            for (int down = 0; down < 4; down++) {
                if (raster.dot(column * 2 + right, row * 4 + 3 - down)) {
                    bits |= BRAILLE_BITS[right][down];
                }
            }
        }
        return bits == 0 ? ' ' : (char) (0x2800 + bits);
    }

    private static char asciiCell(Raster raster, int column, int row) {
        int from = Math.max(row * 3, raster.low(column));
        int to = Math.min(row * 3 + 2, raster.high(column));
        if (from > to) {
            return ' ';
        }
        return from < to ? '|' : "_-'".charAt(from - row * 3);
    }

    private static List<String> axis(LinePlot plot, int width) {
        // five marks, at quarters of the axis; each label stands with its middle under its mark
        StringBuilder marks = new StringBuilder("-".repeat(width));
        StringBuilder labels = new StringBuilder(" ".repeat(MARGIN_COLUMNS + width));
        for (int quarter = 0; quarter <= 4; quarter++) {
            int at = Math.round(quarter * (width - 1) / 4f);
            marks.setCharAt(at, '+');
            String text = number(plot.fromX() + (plot.toX() - plot.fromX()) * quarter / 4);
            int start = Math.min(MARGIN_COLUMNS + at - text.length() / 2, MARGIN_COLUMNS + width - text.length());
            labels.replace(start, start + text.length(), text);
        }
        String name = " ".repeat(MARGIN_COLUMNS + Math.max(0, (width - plot.xLabel().length()) / 2)) + plot.xLabel();
        return List.of(" ".repeat(MARGIN_COLUMNS) + marks, labels.toString().stripTrailing(), name);
    }

    private static String label(String text) {
        return " ".repeat(Math.max(0, MARGIN_COLUMNS - 1 - text.length())) + text + " ";
    }

    /** Three digits that matter, no trailing zeros, no exponent in the range that volts and degrees have here. */
    private static String number(double value) {
        if (value == 0 || Math.abs(value) < 5e-7) {
            return "0";
        }
        int decimals = Math.max(0, 2 - (int) Math.floor(Math.log10(Math.abs(value))));
        String text = String.format(Locale.ROOT, "%." + Math.min(decimals, 6) + "f", value);
        return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
    }
}
