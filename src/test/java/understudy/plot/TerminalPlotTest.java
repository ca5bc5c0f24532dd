package understudy.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import understudy.plot.LinePlot.Panel;
import understudy.plot.LinePlot.Point;

class TerminalPlotTest {

    /** High for the first half of the axis, low for the second: two bars joined by one upright step in the middle. */
    private static final LinePlot STEP = new LinePlot("A step", "angle, deg", 0, 360, List.of(new Panel(
            "crank", "V", List.of(new Point(0, 1.2), new Point(180, 1.2), new Point(180, -1.2), new Point(360, -1.2)))));

    @Test
    void drawsInPlainCharactersWhereThereIsNoBraille() {
        assertThat(TerminalPlot.draw(STEP, 40, 2, false)).containsExactly(
                "A step",
                "",
                "        crank, V",
                "    1.2 ''''''''''''''''|",
                "   -1.2                 |_______________",
                "        +-------+-------+------+-------+",
                "        0      90      180    270    360",
                "                   angle, deg");
    }

    @Test
    void drawsInBraille() {
        // from The Unicode Standard, Braille Patterns: dots 1 and 4 are the top row (U+2809), 7 and 8 the bottom row
        // (U+28C0), 1-2-3-7 the whole left column (U+2847)
        String high = "\u2809".repeat(16);
        String low = "\u28c0".repeat(15);
        assertThat(TerminalPlot.draw(STEP, 40, 2, true).subList(3, 5)).containsExactly(
                "    1.2 " + high + "\u2847", "   -1.2 " + " ".repeat(16) + "\u28c7" + low);
    }

    @Test
    void aFlatLineLiesInTheMiddle() {
        LinePlot flat = new LinePlot("Flat", "angle, deg", 0, 720,
                List.of(new Panel("cam", "V", List.of(new Point(0, 0.25), new Point(720, 0.25)))));
        assertThat(TerminalPlot.draw(flat, 40, 3, false).subList(3, 6))
                .containsExactly("   0.25", "        " + "-".repeat(32), "   0.25");
    }

    @Test
    void aNarrowTerminalGetsTheLeastWidthThatCanBeRead() {
        assertThat(TerminalPlot.draw(STEP, 3, 2, false)).isEqualTo(TerminalPlot.draw(STEP, 40, 2, false));
    }

    @Test
    void refusesWhatCannotBeDrawn() {
        assertThatThrownBy(() -> new Point(0, Double.NaN)).hasMessage("a point must be finite, got 0.0, NaN");
        assertThatThrownBy(() -> new Panel("cam", "V", List.of(new Point(0, 0))))
                .hasMessage("a line needs at least two points: cam");
        assertThatThrownBy(() -> new Panel("cam", "V", List.of(new Point(1, 0), new Point(0, 0))))
                .hasMessage("the points of a line must go from left to right: cam");
        assertThatThrownBy(() -> new LinePlot("", "", 0, 360, List.of())).hasMessage("a plot needs at least one panel");
        assertThatThrownBy(() -> new LinePlot("", "", 1, 1, STEP.panels()))
                .hasMessage("the axis must go from less to more, got 1.0 to 1.0");
    }
}
