package understudy.plot;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.font.FontRenderContext;
import java.awt.font.TextLayout;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import understudy.refusal.Refused;
import understudy.text.WholeFile;

/**
 * Writes a plot as a picture: {@code .png} or {@code .svg} by the file's ending. The file appears whole or not at all.
 */
public final class PlotFile {

    /** Pixels of a PNG for one unit of the drawing: crisp on fine screens and on paper. */
    private static final int PNG_SCALE = 2;

    /** The endings of names that a picture can have. */
    public static final List<String> ENDINGS = List.of(".png", ".svg");

    private PlotFile() {}

    /** Likewise; a failure is a matter of the set-up. */
    public static void writeOrRefuse(LinePlot plot, Path file) {
        try {
            write(plot, file);
        } catch (IOException e) {
            throw Refused.setup(file.toString(), "the picture could not be written: " + e.getMessage(), "", e);
        }
    }

    /** Whether the ending is one that {@link #write} can draw. */
    public static boolean canWrite(Path file) {
        return ending(file).equals("png") || ending(file).equals("svg");
    }

    /**
     * @throws IOException              when the file can't be written, or this machine can't draw text; the message
     *                                  says what to do
     * @throws IllegalArgumentException for another ending than png or svg
     */
    public static void write(LinePlot plot, Path file) throws IOException {
        if (!canWrite(file)) {
            throw new IllegalArgumentException("a plot is written as .png or .svg, not as " + file);
        }
        WholeFile.write(out -> draw(plot, out, ending(file).equals("png")), file);
    }

    private static void draw(LinePlot plot, OutputStream out, boolean png) throws IOException {
        // no window is ever opened, and without a screen Java would otherwise refuse to draw
        System.setProperty("java.awt.headless", "true");
        needFonts();
        if (png) {
            drawPng(new Painting(plot), out);
        } else {
            drawSvg(new Painting(plot), out);
        }
    }

    /** Tries on one letter what a machine without fonts fails at, in ways that differ with its Java. */
    private static void needFonts() throws IOException {
        try {
            new TextLayout("V", new Font(Font.SANS_SERIF, Font.PLAIN, 12), new FontRenderContext(null, true, true));
        } catch (Error | RuntimeException e) {
            throw new IOException("this machine has no fonts for Java to draw text with; install some"
                    + " (Debian, Ubuntu: apt-get install fontconfig fonts-dejavu-core) and try again", e);
        }
    }

    private static void drawPng(Painting painting, OutputStream out) throws IOException {
        BufferedImage image = new BufferedImage(
                Painting.WIDTH * PNG_SCALE, painting.height() * PNG_SCALE, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = image.createGraphics();
        try {
            pen.scale(PNG_SCALE, PNG_SCALE);
            pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            pen.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            pen.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
            painting.paint(pen);
        } finally {
            pen.dispose();
        }
        // into a stream of ours: given a file, it would print its own trouble and hide the reason
        ImageIO.write(image, "png", out);
    }

    private static void drawSvg(Painting painting, OutputStream out) throws IOException {
        SVGGraphics2D pen = new SVGGraphics2D(emptySvg());
        pen.setSVGCanvasSize(new Dimension(Painting.WIDTH, painting.height()));
        painting.paint(pen);
        Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        pen.stream(writer, true);
        writer.flush();
    }

    private static Document emptySvg() {
        try {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder().getDOMImplementation()
                    .createDocument("http://www.w3.org/2000/svg", "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("every Java has an XML parser of its own", e);
        }
    }

    private static String ending(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
    }
}
