package understudy.plot;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.style.XYStyler;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** Lays a plot out on paper: the title, then one chart a panel. Units are those of the pen, 1 unit about 1 px. */
final class Painting {

    static final int WIDTH = 1100;
    private static final int TITLE_HEIGHT = 48;
    private static final int PANEL_HEIGHT = 210;
    /** What the last panel needs more than the others, for the name of the x axis. */
    private static final int AXIS_HEIGHT = 34;

    private static final Color PAPER = Color.WHITE;
    private static final Color INK = new Color(0x26, 0x2a, 0x33);
    private static final Color FAINT = new Color(0xe4, 0xe4, 0xe0);
    private static final Color LINE = new Color(0x8c, 0x2f, 0x1b);

    private final LinePlot plot;

    Painting(LinePlot plot) {
        this.plot = plot;
    }

    int height() {
        return TITLE_HEIGHT + PANEL_HEIGHT * plot.panels().size() + AXIS_HEIGHT;
    }

    void paint(Graphics2D pen) {
        pen.setColor(PAPER);
        pen.fillRect(0, 0, WIDTH, height());
        pen.setColor(INK);
        pen.setFont(font(Font.BOLD, 18));
        pen.drawString(plot.title(), 24, 32);
        AffineTransform paper = pen.getTransform();
        for (int i = 0; i < plot.panels().size(); i++) {
            boolean last = i == plot.panels().size() - 1;
            XYChart chart = chart(plot.panels().get(i), last);
            pen.setTransform(paper);
            pen.translate(0, TITLE_HEIGHT + i * PANEL_HEIGHT);
            chart.paint(pen, WIDTH, PANEL_HEIGHT + (last ? AXIS_HEIGHT : 0));
        }
        pen.setTransform(paper);
    }

    private XYChart chart(LinePlot.Panel panel, boolean last) {
        XYChart chart = new XYChartBuilder().width(WIDTH).height(PANEL_HEIGHT).title(panel.name()).build();
        chart.setYAxisTitle(panel.yLabel());
        if (last) {
            chart.setXAxisTitle(plot.xLabel());
        }
        XYStyler style = chart.getStyler();
        style.setLegendVisible(false);
        style.setXAxisLogarithmic(plot.byDecades());
        if (plot.byDecades()) {
            style.setXAxisDecimalPattern("#.###"); // 10000, not 1E4
        }
        style.setYAxisDecimalPattern("0.######"); // 0.05, not .05
        style.setXAxisMin(plot.fromX());
        style.setXAxisMax(plot.toX());
        double margin = panel.mostY() > panel.leastY() ? (panel.mostY() - panel.leastY()) * 0.08 : 1;
        style.setYAxisMin(panel.leastY() - margin);
        style.setYAxisMax(panel.mostY() + margin);
        style.setChartBackgroundColor(PAPER);
        style.setPlotBackgroundColor(PAPER);
        style.setPlotBorderColor(FAINT);
        style.setPlotGridLinesColor(FAINT);
        style.setPlotGridLinesStroke(new BasicStroke(1));
        style.setAxisTickMarksColor(INK);
        style.setChartFontColor(INK);
        style.setAxisTickLabelsColor(INK);
        style.setChartTitleFont(font(Font.PLAIN, 14));
        style.setAxisTitleFont(font(Font.PLAIN, 13));
        style.setAxisTickLabelsFont(font(Font.PLAIN, 12));
        style.setChartTitlePadding(6);
        // all but a hair: marks at the very ends of the frame would be left out
        style.setPlotContentSize(0.985);
        style.setXAxisTickMarkSpacingHint(60);
        style.setYAxisTickMarkSpacingHint(30);
        style.setChartPadding(12);
        // keeps the left edges of all panels in one line, whatever their numbers look like
        style.setYAxisLeftWidthHint(70);
        List<LinePlot.Point> points = drawable(panel.points());
        double[] x = points.stream().mapToDouble(LinePlot.Point::x).toArray();
        double[] y = points.stream().mapToDouble(LinePlot.Point::y).toArray();
        XYSeries line = chart.addSeries(panel.name(), x, y);
        line.setMarker(SeriesMarkers.NONE);
        line.setLineColor(LINE);
        line.setLineStyle(new BasicStroke(1.6f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        return chart;
    }

    /**
     * The points to hand to the chart: without those between two of the same height, which are most of a square
     * signal's and would cost a line of SVG each; and with the middle of the first two, since over evenly spaced
     * points the chart sets the marks of its axis by the points, at odd numbers.
     */
    private static List<LinePlot.Point> drawable(List<LinePlot.Point> points) {
        List<LinePlot.Point> kept = new ArrayList<>();
        kept.add(points.get(0));
        kept.add(middle(points.get(0), points.get(1)));
        for (int i = 1; i < points.size(); i++) {
            double y = points.get(i).y();
            boolean last = i == points.size() - 1;
            if (last || points.get(i - 1).y() != y || points.get(i + 1).y() != y) {
                kept.add(points.get(i));
            }
        }
        return kept;
    }

    private static LinePlot.Point middle(LinePlot.Point a, LinePlot.Point b) {
        return new LinePlot.Point((a.x() + b.x()) / 2, (a.y() + b.y()) / 2);
    }

    private static Font font(int style, int size) {
        return new Font(Font.SANS_SERIF, style, size);
    }
}
