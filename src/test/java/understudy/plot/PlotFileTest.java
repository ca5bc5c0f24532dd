package understudy.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Document;
import understudy.plot.LinePlot.Panel;
import understudy.plot.LinePlot.Point;

class PlotFileTest {

    private static final LinePlot TWO_PANELS = new LinePlot("Crank & cam <36-1>", "angle, deg", 0, 360, List.of(
            new Panel("crank", "V", List.of(new Point(0, -1), new Point(180, 1), new Point(360, -1))),
            new Panel("cam", "V", List.of(new Point(0, 0), new Point(360, 0)))));

    @TempDir
    private Path folder;

    @Test
    void aPngShowsTheLineWhereItBelongs() throws IOException {
        Path file = folder.resolve("plot.png");
        PlotFile.write(TWO_PANELS, file);
        BufferedImage image = ImageIO.read(file.toFile());
        assertThat(image.getWidth()).isEqualTo(2200);
        // the upper line has its peak in the middle of the frame, whose left end lies beside the axis labels and whose
        // right end lies at the margin: the topmost pixel in the line's colour must be there
        int peakX = topmostOfTheLine(image);
        double left = 70 + 12;
        double right = 1100 - 12;
        // 1 % of the frame: what the margin for the marks at the ends may take on one side
        assertThat(peakX / 2.0).isBetween((left + right) / 2 - 0.02 * (right - left), (left + right) / 2 + 0.02 * (right - left));
    }

    private static int topmostOfTheLine(BufferedImage image) {
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y);
                boolean red = (rgb >> 16 & 255) > (rgb >> 8 & 255) + 80;
                if (red) {
                    return x;
                }
            }
        }
        throw new AssertionError("there is no line in the picture");
    }

    @Test
    void anSvgIsWellFormedAndHoldsTheTitle() throws Exception {
        Path file = folder.resolve("plot.SVG");
        PlotFile.write(TWO_PANELS, file);
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        Document svg = factory.newDocumentBuilder().parse(file.toFile());
        assertThat(svg.getDocumentElement().getTagName()).isEqualTo("svg");
        assertThat(svg.getDocumentElement().getTextContent()).contains("Crank & cam <36-1>");
    }

    @Test
    void nothingIsLeftWhenItCannotBeWritten() throws IOException {
        Path occupied = Files.createDirectories(folder.resolve("plot.png/inner"));
        assertThatThrownBy(() -> PlotFile.write(TWO_PANELS, folder.resolve("plot.png"))).isInstanceOf(IOException.class);
        assertThat(occupied).exists();
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).containsExactly(folder.resolve("plot.png"));
        }
    }

    @Test
    void otherEndingsAreRefusedByName() {
        assertThat(PlotFile.canWrite(Path.of("a.jpeg"))).isFalse();
        assertThat(PlotFile.canWrite(Path.of("png"))).isFalse();
        assertThatThrownBy(() -> PlotFile.write(TWO_PANELS, Path.of("a.jpeg")))
                .hasMessage("a plot is written as .png or .svg, not as a.jpeg");
    }
}
