package understudy.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import understudy.trace.Answer;

class ReportFileTest {

    @TempDir
    private Path folder;

    private static final Sample FINISHED = Sample.speedometer().cautioned().reference(Answer.value(50)).bad(1).good(2).bad(1)
            .good(2).repaired("Two terminals replaced").good(0).closed();
    /** Made once, since laying out a page takes its time. */
    private static final byte[] ON_A4 = bytes(FINISHED, Paper.A4);

    private static byte[] bytes(Sample sample, Paper paper) {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ReportFile.pdf(sample.report(), paper, out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static PDDocument pdf(Sample sample, Paper paper) throws IOException {
        return Loader.loadPDF(bytes(sample, paper));
    }

    /** On one line, since where lines break is the page's affair. */
    private static String text(PDDocument pdf) throws IOException {
        return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
    }

    @Test
    void papersHaveTheirSizes() throws IOException {
        // 210 mm by 297 mm and 8.5 in by 11 in, in points of 1/72 in; a renderer may round to its own small unit
        assertSize(Loader.loadPDF(ON_A4), 210 / 25.4 * 72, 297 / 25.4 * 72);
        assertSize(pdf(FINISHED, Paper.LETTER), 8.5 * 72, 11 * 72);
    }

    private static void assertSize(PDDocument opened, double widthPoints, double heightPoints) throws IOException {
        try (PDDocument pdf = opened) {
            for (PDPage page : pdf.getPages()) {
                PDRectangle box = page.getMediaBox();
                assertThat(Math.abs(box.getWidth() - widthPoints)).isLessThan(0.5);
                assertThat(Math.abs(box.getHeight() - heightPoints)).isLessThan(0.5);
            }
        }
    }

    @Test
    void thePdfSaysWhatThePageSays() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(ON_A4)) {
            String text = text(pdf);
            // every paragraph, list item and cell of the HTML; the drawings' words are drawn as shapes
            var page = Pages.of(FINISHED).getDocumentElement();
            for (String tag : List.of("h1", "h2", "p", "li", "th", "td")) {
                Pages.elements(page, tag).forEach(one -> assertThat(unspaced(text)).contains(unspaced(one.getTextContent())));
            }
            assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo("Report on job speedometer");
        }
    }

    /** A word that is cut at a line's end is still the word. */
    private static String unspaced(String text) {
        return text.replaceAll("\\s+", "");
    }

    @Test
    void lettersOfManyLanguagesAreInThePdf() throws IOException {
        try (PDDocument pdf = pdf(Sample.speedometer("f\u00e4llt \u017d\u0142 \u03a9\u03bc \u0416\u0449 \u20ac", "J\u00fcrgen Gr\u00f6\u00df"), Paper.A4)) {
            assertThat(text(pdf)).contains("f\u00e4llt \u017d\u0142 \u03a9\u03bc \u0416\u0449 \u20ac", "J\u00fcrgen Gr\u00f6\u00df").doesNotContain("Unicode");
        }
    }

    @Test
    void lettersThatThePdfCantShowAreNamedNotLost() throws IOException {
        // Japanese, a symbol beyond 16 bits, Hebrew, a letter and its accent apart, a half of a pair
        String typed = "\u901f\u5ea6 \ud83d\ude9c \u05d0 e\u0301 \ud83d";
        try (PDDocument pdf = pdf(Sample.speedometer(typed, "A"), Paper.A4)) {
            assertThat(text(pdf)).contains("[U+901F][U+5EA6] [U+1F69C] [U+05D0] \u00e9 [U+FFFD]", "written as their Unicode numbers");
        }
    }

    @Test
    void boldLettersAreNotLostEither() throws IOException {
        try (PDDocument pdf = pdf(Sample.speedometer().called("\u017d\u03a9\u0416 job"), Paper.A4)) {
            assertThat(text(pdf)).contains("Report on job \u017d\u03a9\u0416 job");
        }
    }

    @Test
    void everyFontIsInsideThePdf() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(ON_A4)) {
            for (PDPage page : pdf.getPages()) {
                for (var name : page.getResources().getFontNames()) {
                    assertThat(page.getResources().getFont(name).isEmbedded()).isTrue();
                }
            }
        }
    }

    @Test
    void theDrawingIsInThePdf() throws IOException {
        try (PDDocument pdf = Loader.loadPDF(ON_A4)) {
            var image = new PDFRenderer(pdf).renderImageWithDPI(0, 72);
            int[] pixels = image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
            // one mark is bad, 28 of 1000 units of 180 mm square: 14 points; a quarter of it at least is not white sign or edge.
            // Text in that colour stands in the tables of later pages only.
            assertThat(Arrays.stream(pixels).filter(pixel -> (pixel & 0xFFFFFF) == 0xB3261E).count()).isGreaterThan(14 * 14 / 4);
            assertThat(Arrays.stream(pixels).filter(pixel -> (pixel & 0xFFFFFF) == 0x00694B).count()).isGreaterThan(14 * 14 / 4);
        }
    }

    @Test
    void aReportAppearsWholeOrNotAtAll() throws IOException {
        for (String ending : ReportFile.ENDINGS) {
            Path old = Files.writeString(folder.resolve("old" + ending), "what was there");
            Path nowhere = folder.resolve("missing").resolve("r" + ending);
            assertThatThrownBy(() -> ReportFile.write(FINISHED.report(), Paper.A4, nowhere)).isInstanceOf(IOException.class);
            ReportFile.write(FINISHED.report(), Paper.A4, old);
            assertThat(Files.size(old)).isGreaterThan(5000);
        }
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString())).containsExactlyInAnyOrder("old.html", "old.pdf");
        }
    }

    @Test
    void aLongCircuitBreaksBetweenItsRows() throws IOException {
        Sample longest = Sample.wires(java.util.stream.IntStream.range(0, 64).mapToObj(i -> "p" + i).toList()).cautioned().bad(3);
        try (PDDocument pdf = pdf(longest, Paper.LETTER)) {
            assertThat(pdf.getNumberOfPages()).isBetween(3, 8);
        }
    }
}
