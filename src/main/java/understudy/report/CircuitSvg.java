package understudy.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import understudy.trace.Suspect;

/** Draws a circuit as rows: things that may be bad as lines and boxes, points as marks between them. */
final class CircuitSvg {

    static final int WIDTH = 1000;
    private static final int MOST_IN_ROW = 6;
    private static final int WIDEST_CELL = 250;
    private static final int FONT = 15;
    private static final int LINE = 19;
    private static final int RADIUS = 15;
    /** What a name leaves free of its cell. */
    private static final int GAP = 10;

    private static final List<PointMark> LEGEND = List.of(PointMark.GOOD, PointMark.BAD, PointMark.BOTH, PointMark.NOT_TESTED);
    private static final int LEGEND_CELL = WIDTH / LEGEND.size();
    private static final int LEGEND_Y = 20;

    private static final String INK = "#111111";
    private static final String GOOD = "#00694b";
    private static final String BAD = "#b3261e";
    private static final String BOTH = "#7a4a00";

    private final CircuitDrawing drawing;
    private final UnaryOperator<String> letters;
    private final int cellWidth;
    private final Markup svg;
    private int wire;

    private CircuitSvg(CircuitDrawing drawing, UnaryOperator<String> letters, int cellWidth) {
        this.drawing = drawing;
        this.letters = letters;
        this.cellWidth = cellWidth;
        this.svg = new Markup(letters);
    }

    /** A picture a row, each complete in itself. */
    static List<String> rows(CircuitDrawing drawing, UnaryOperator<String> letters) {
        List<Suspect> suspects = drawing.circuit().suspects();
        int rows = (suspects.size() + MOST_IN_ROW - 1) / MOST_IN_ROW;
        int perRow = (suspects.size() + rows - 1) / rows;
        List<String> pictures = new ArrayList<>();
        for (int from = 0; from < suspects.size(); from += perRow) {
            int to = Math.min(suspects.size(), from + perRow);
            // half a cell to spare, for half the name of the last point
            int cellWidth = Math.min(WIDEST_CELL, 2 * WIDTH / (2 * perRow + 1));
            pictures.add(new CircuitSvg(drawing, letters, cellWidth).row(suspects.subList(from, to)));
        }
        return pictures;
    }

    private String row(List<Suspect> suspects) {
        List<List<String>> above = new ArrayList<>();
        List<List<String>> below = new ArrayList<>();
        for (Suspect suspect : suspects) {
            above.add(lines(suspect.name(), cellWidth - 2 * GAP));
            below.add(suspect.index() < drawing.marks().size() ? pointLines(suspect.index()) : List.of());
        }
        wire = 8 + LINE * most(above) + LINE + RADIUS;
        int height = wire + RADIUS + 12 + LINE * most(below) + 8;
        begin(height);
        svg.leaf("title", "The circuit, " + suspects.get(0).name() + " to " + suspects.get(suspects.size() - 1).name());
        for (int cell = 0; cell < suspects.size(); cell++) {
            link(suspects.get(cell), cell * cellWidth, above.get(cell));
        }
        for (int cell = 0; cell < suspects.size(); cell++) {
            int point = suspects.get(cell).index();
            if (point < drawing.marks().size()) {
                mark(drawing.marks().get(point), "mark", (cell + 1) * cellWidth, wire);
                texts(below.get(cell), (cell + 1) * cellWidth, wire + RADIUS + LINE);
            }
        }
        return svg.close().toString();
    }

    private void begin(int height) {
        svg.open("svg", "xmlns", "http://www.w3.org/2000/svg", "viewBox", "0 0 " + WIDTH + " " + height, "width", WIDTH,
                "height", height, "font-family", "Report, sans-serif", "font-size", FONT, "fill", INK);
    }

    /** What the marks mean, in one line. */
    static String legend() {
        CircuitSvg drawn = new CircuitSvg(null, text -> text, LEGEND_CELL);
        drawn.begin(2 * LEGEND_Y);
        drawn.svg.leaf("title", "What the marks mean");
        for (int i = 0; i < LEGEND.size(); i++) {
            drawn.mark(LEGEND.get(i), "legend", i * LEGEND_CELL + 20, LEGEND_Y);
            drawn.svg.leaf("text", LEGEND.get(i).legend(), "x", i * LEGEND_CELL + 45, "y", LEGEND_Y + 5);
        }
        return drawn.svg.close().toString();
    }

    private static int most(List<List<String>> lines) {
        return lines.stream().mapToInt(List::size).max().orElse(0);
    }

    private List<String> pointLines(int point) {
        List<String> lines = new ArrayList<>(lines((point + 1) + " " + drawing.circuit().points().get(point).name(),
                cellWidth - GAP));
        lines.addAll(lines(drawing.marks().get(point).words(), cellWidth - GAP));
        drawing.stepWords(point).ifPresent(words -> lines.addAll(lines("(" + words + ")", cellWidth - GAP)));
        return lines;
    }

    private List<String> lines(String words, int width) {
        return TextWidth.wrap(letters.apply(words), width / (double) FONT);
    }

    /** What lies before a point: a line with its name over it, a box for sensor and module, a zigzag or a thick frame once convicted. */
    private void link(Suspect suspect, int left, List<String> name) {
        boolean module = suspect.side() == Suspect.Side.MODULE;
        int middle = left + cellWidth / 2;
        int from = suspect.side() == Suspect.Side.SENSOR ? middle : left;
        // beyond the point too, so that a row's end shows that it goes on
        int to = module ? middle : left + cellWidth + cellWidth / 3;
        boolean bad = drawing.convicted().contains(suspect.index());
        svg.empty("path", "d", "M" + from + " " + wire + " H" + to, "stroke", INK, "stroke-width", 3, "fill", "none");
        if (suspect.side() != Suspect.Side.SEGMENT) {
            svg.empty("rect", "x", middle - 34, "y", wire - RADIUS, "width", 68, "height", 2 * RADIUS, "rx", 4, "fill", "#ffffff",
                    "stroke", bad ? BAD : INK, "stroke-width", bad ? 5 : 2);
            texts(List.of(module ? "module" : "sensor"), middle, wire + 5);
        }
        if (bad) {
            convicted(suspect, middle);
        }
        texts(name, middle, wire - RADIUS - LINE - LINE * (name.size() - 1) + 3 - (bad ? LINE : 0));
    }

    private void convicted(Suspect suspect, int middle) {
        if (suspect.side() == Suspect.Side.SEGMENT) {
            svg.empty("path", "d", "M" + (middle - 48) + " " + wire
                    + " l6 -9 l12 18 l12 -18 l12 18 l12 -18 l12 18 l12 -18 l12 18 l6 -9", "stroke", BAD, "stroke-width", 4,
                    "fill", "none");
        }
        svg.empty("rect", "x", middle - 50, "y", wire - RADIUS - LINE - 4, "width", 100, "height", LINE, "rx", 3, "fill", BAD);
        svg.leaf("text", CircuitDrawing.CONVICTED, "x", middle, "y", wire - RADIUS - 9, "text-anchor", "middle",
                "fill", "#ffffff", "font-size", 13);
    }

    private void texts(List<String> lines, int x, int y) {
        for (int i = 0; i < lines.size(); i++) {
            svg.leaf("text", lines.get(i), "x", x, "y", y + i * LINE, "text-anchor", "middle");
        }
    }

    /** Told apart by shape, by the sign in it and by colour. */
    private void mark(PointMark mark, String role, int x, int y) {
        svg.open("g", "class", role + " " + mark.name().toLowerCase(Locale.ROOT).replace('_', '-'), "stroke-width", 3, "fill", "none");
        switch (mark) {
            case GOOD -> {
                svg.empty("circle", "cx", x, "cy", y, "r", RADIUS, "fill", GOOD, "stroke", GOOD);
                svg.empty("path", "d", "M" + (x - 7) + " " + y + " l5 6 l9 -12", "stroke", "#ffffff");
            }
            case BAD -> {
                svg.empty("rect", "x", x - 14, "y", y - 14, "width", 28, "height", 28, "fill", BAD, "stroke", BAD);
                svg.empty("path", "d", "M" + (x - 7) + " " + (y - 7) + " l14 14 m0 -14 l-14 14", "stroke", "#ffffff");
            }
            case BOTH -> {
                svg.empty("path", "d", "M" + x + " " + (y - 17) + " l18 17 l-18 17 l-18 -17 z", "fill", BOTH, "stroke", BOTH);
                svg.empty("path", "d", "M" + x + " " + (y - 9) + " v10 m0 4 v4", "stroke", "#ffffff");
            }
            case NOT_TESTED -> svg.empty("circle", "cx", x, "cy", y, "r", RADIUS - 2, "fill", "#ffffff", "stroke", INK,
                    "stroke-dasharray", "5 4");
            case CLOSED -> svg.empty("path", "d", "M" + x + " " + (y - 10) + " v20", "stroke", INK);
        }
        svg.close();
    }
}
