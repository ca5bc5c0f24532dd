package understudy.plot;

import java.util.Locale;
import understudy.plot.WiringPlan.Kind;
import understudy.plot.WiringPlan.Part;
import understudy.plot.WiringPlan.Place;

/** Draws a box's plan as SVG: black on white, symbols of IEC 60617, to be read at arm's length on a workbench. */
final class WiringSvg {

    private static final int WIDTH = 900;
    private static final int HEIGHT = 360;
    private static final int UPPER = 110;
    private static final int LOWER = 250;
    private static final int FIRST_PLACE = 250;
    private static final int STEP = 150;
    private static final int SHUNT = 580;
    private static final int CLIP = 690;

    private final StringBuilder svg = new StringBuilder();

    private WiringSvg() {}

    static String of(WiringPlan plan) {
        return new WiringSvg().draw(plan);
    }

    private String draw(WiringPlan plan) {
        svg.append("""
                <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" width="%d" height="%d" font-family="sans-serif" font-size="19">
                <title>The box between the audio jack and the clips</title>
                <rect width="%d" height="%d" fill="white"/>
                <rect x="165" y="50" width="480" height="255" rx="14" fill="none" stroke="#888" stroke-width="2" stroke-dasharray="9 7"/>
                <g fill="none" stroke="black" stroke-width="3" stroke-linecap="round">
                """.formatted(WIDTH, HEIGHT, WIDTH, HEIGHT, WIDTH, HEIGHT));
        StringBuilder labels = new StringBuilder();
        line(120, UPPER, CLIP, UPPER);
        line(120, LOWER, CLIP, LOWER);
        jack();
        clip(UPPER);
        clip(LOWER);
        int x = FIRST_PLACE;
        for (Place place : plan.places()) {
            if (place.upper().isPresent() && place.upper().get().kind() == Kind.TRANSFORMER) {
                transformer(x, place.upper().get(), labels);
            } else {
                int at = x;
                place.upper().ifPresent(part -> inLine(at, UPPER, part, labels));
                place.lower().ifPresent(part -> inLine(at, LOWER, part, labels));
            }
            x += STEP;
        }
        plan.shunt().ifPresent(part -> shunt(part, labels));
        svg.append("</g>\n<g fill=\"black\">\n");
        text(labels, 60, UPPER - 42, "middle", "normal", "audio jack");
        text(labels, 60, UPPER + 7, "middle", "normal", "tip");
        text(labels, 60, LOWER + 7, "middle", "normal", "sleeve");
        text(labels, CLIP + 62, UPPER - 8, "start", "bold", "signal clip");
        text(labels, CLIP + 62, UPPER + 17, "start", "normal", "on LAST");
        text(labels, CLIP + 62, LOWER - 8, "start", "bold", plan.floating() ? "return clip" : "ground clip");
        text(labels, CLIP + 62, LOWER + 17, "start", "normal", "on FIRST");
        text(labels, WIDTH / 2, HEIGHT - 17, "middle", "normal", plan.note());
        svg.append(labels).append("</g>\n</svg>\n");
        return svg.toString();
    }

    private void line(double x1, double y1, double x2, double y2) {
        svg.append(String.format(Locale.ROOT, "<path d=\"M%s %s L%s %s\"/>%n", number(x1), number(y1), number(x2), number(y2)));
    }

    private static String number(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }

    private void jack() {
        for (int y : new int[] {UPPER, LOWER}) {
            svg.append("<circle cx=\"112\" cy=\"").append(y).append("\" r=\"8\" fill=\"white\"/>\n");
        }
    }

    /** Jaws, open to the right. */
    private void clip(int y) {
        svg.append(String.format(Locale.ROOT,
                "<path d=\"M%1$d %2$d l14 -11 l36 4 M%1$d %2$d l14 11 l36 -4\"/>%n<circle cx=\"%1$d\" cy=\"%2$d\" r=\"5\" fill=\"black\"/>%n",
                CLIP, y));
    }

    private void inLine(int x, int y, Part part, StringBuilder labels) {
        if (part.kind() == Kind.RESISTOR) {
            svg.append("<rect x=\"").append(x - 38).append("\" y=\"").append(y - 15)
                    .append("\" width=\"76\" height=\"30\" fill=\"white\"/>\n");
        } else {
            svg.append("<rect x=\"").append(x - 6).append("\" y=\"").append(y - 24)
                    .append("\" width=\"12\" height=\"48\" fill=\"white\" stroke=\"none\"/>\n");
            line(x - 6, y - 24, x - 6, y + 24);
            line(x + 6, y - 24, x + 6, y + 24);
        }
        text(labels, x, y - 30, "middle", "bold", part.name());
        text(labels, x, y + 45, "middle", "normal", value(part));
    }

    /** Two windings of four turns, a core between them. */
    private void transformer(int x, Part part, StringBuilder labels) {
        svg.append("<rect x=\"").append(x - 30).append("\" y=\"").append(UPPER - 4).append("\" width=\"60\" height=\"")
                .append(LOWER - UPPER + 8).append("\" fill=\"white\" stroke=\"none\"/>\n");
        int turn = (LOWER - UPPER) / 4;
        for (int side : new int[] {-1, 1}) {
            svg.append("<path d=\"M").append(x + side * 30).append(' ').append(UPPER);
            for (int t = 1; t <= 4; t++) {
                svg.append(" A18 ").append(turn / 2.0).append(" 0 0 ").append(side < 0 ? 1 : 0).append(' ')
                        .append(x + side * 30).append(' ').append(UPPER + t * turn);
            }
            svg.append("\"/>\n");
            line(x + side * 4, UPPER + 6, x + side * 4, LOWER - 6);
        }
        text(labels, x, UPPER - 30, "middle", "bold", part.name());
        text(labels, x, LOWER + 35, "middle", "normal", value(part));
    }

    private void shunt(Part part, StringBuilder labels) {
        line(SHUNT, UPPER, SHUNT, LOWER);
        int middle = (UPPER + LOWER) / 2;
        svg.append("<rect x=\"").append(SHUNT - 15).append("\" y=\"").append(middle - 38)
                .append("\" width=\"30\" height=\"76\" fill=\"white\"/>\n");
        for (int y : new int[] {UPPER, LOWER}) {
            svg.append("<circle cx=\"").append(SHUNT).append("\" cy=\"").append(y).append("\" r=\"5\" fill=\"black\"/>\n");
        }
        text(labels, SHUNT - 28, middle - 6, "end", "bold", part.name());
        text(labels, SHUNT - 28, middle + 19, "end", "normal", value(part));
    }

    private static String value(Part part) {
        return part.value().replace("ohm", "\u03a9").replace(" uF", " \u00b5F");
    }

    private static void text(StringBuilder labels, int x, int y, String anchor, String weight, String words) {
        labels.append("<text x=\"").append(x).append("\" y=\"").append(y).append("\" text-anchor=\"").append(anchor)
                .append("\" font-weight=\"").append(weight).append("\">").append(words).append("</text>\n");
    }
}
