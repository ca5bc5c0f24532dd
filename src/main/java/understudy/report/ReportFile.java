package understudy.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import understudy.refusal.Refused;
import understudy.text.WholeFile;

/** Writes a report as HTML or PDF, by the file's ending. The file appears whole or not at all. */
public final class ReportFile {

    /** That a report can be written with. */
    public static final List<String> ENDINGS = List.of(".html", ".pdf");

    private static final String CODES = "Letters that this PDF can't show are written as their Unicode numbers, like [U+4E2D]."
            + " The report as HTML shows them.";

    /** Kept, since a logger that nobody holds forgets its level. It would tell of fonts that no report asks for. */
    private static final Logger PDFBOX_LOG = Logger.getLogger("org.apache.pdfbox");

    private ReportFile() {}

    /** @throws IOException when the file can't be written */
    public static void write(Report report, Paper paper, Path file) throws IOException {
        WholeFile.write(out -> {
            if (file.toString().toLowerCase(Locale.ROOT).endsWith(".pdf")) {
                pdf(report, paper, out);
            } else {
                out.write(html(report, paper).getBytes(StandardCharsets.UTF_8));
            }
        }, file);
    }

    static String html(Report report, Paper paper) {
        return ReportHtml.of(report, paper, letters -> letters, Optional.empty());
    }

    static void pdf(Report report, Paper paper, OutputStream out) throws IOException {
        // no window is ever opened, and without a screen Java would otherwise refuse to draw
        System.setProperty("java.awt.headless", "true");
        XRLog.setLoggingEnabled(false);
        PDFBOX_LOG.setLevel(Level.SEVERE);
        PdfLetters letters = new PdfLetters();
        String html = ReportHtml.of(report, paper, letters, Optional.empty());
        if (letters.replaced()) {
            html = ReportHtml.of(report, paper, letters, Optional.of(CODES));
        }
        Path font = PdfLetters.fontFile();
        try (BatikSVGDrawer svg = new BatikSVGDrawer()) {
            PdfRendererBuilder builder = new PdfRendererBuilder();
            builder.withHtmlContent(html, null);
            builder.useUriResolver((base, uri) -> null);
            builder.useSVGDrawer(svg);
            builder.useFont(font.toFile(), "Report", 400, FontStyle.NORMAL, true,
                    EnumSet.of(FSFontUseCase.DOCUMENT, FSFontUseCase.SVG));
            builder.withProducer("Understudy");
            builder.toStream(out);
            builder.run();
        } finally {
            Files.deleteIfExists(font);
        }
    }

    /** Letters and digits stay; what some file systems refuse becomes a dash. */
    public static String name(String job) {
        String plain = job.replaceAll("[^\\p{L}\\p{N}._]+", "-").replaceAll("^[-.]+|[-.]+$", "");
        return (plain.isEmpty() ? "report" : plain) + ".html";
    }

    /** Likewise; a failure is a matter of the set-up. */
    public static void writeOrRefuse(Report report, Paper paper, Path file) {
        try {
            write(report, paper, file);
        } catch (IOException e) {
            String reason = e instanceof FileSystemException system && system.getReason() != null ? system.getReason() : e.getMessage();
            throw Refused.setup(file.toString(), "the report could not be written: " + reason, "see that there is room and that the folder"
                    + " may be written, or choose another one", e);
        }
    }
}
