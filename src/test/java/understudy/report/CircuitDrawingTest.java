package understudy.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;
import understudy.text.Source;
import understudy.trace.Answer;

class CircuitDrawingTest {

    @Test
    void inCharactersItReadsFromSensorToModule() {
        CircuitDrawing drawing = CircuitDrawing.asFound(Sample.speedometer().cautioned().reference(Answer.value(50))
                .bad(0).bad(1).good(2).good(2).bad(1).hunt());
        assertThat(drawing.text()).containsExactly(
                "     |  the sensor's side: sensor, ring or air gap",
                "  1 [x] sensor connector: bad, step 5",
                "     |  wire \"shaft lead\"",
                "  2 [x] tunnel connector: bad, steps 7 and 13",
                "     #  connector \"tunnel connector and tunnel harness\"  <-- CONVICTED",
                "  3 [+] bulkhead connector: good, steps 9 and 11",
                "     |  connector \"bulkhead connector and dash harness\"",
                "  4 [ ] splice: not tested",
                "     |  splice \"splice and module lead\"",
                "  5 [ ] module pin: not tested",
                "     |  the module");
    }

    @Test
    void whatWasWithdrawnLeavesNoMark() {
        CircuitDrawing drawing = CircuitDrawing.asFound(Sample.speedometer().cautioned().reference(Answer.value(50))
                .bad(0).withdraw(5, "slipped").good(3).hunt());
        assertThat(drawing.marks()).containsExactly(PointMark.NOT_TESTED, PointMark.NOT_TESTED, PointMark.NOT_TESTED, PointMark.GOOD, PointMark.NOT_TESTED);
    }

    @Test
    void aPointThatReadBothWaysShowsIt() {
        CircuitDrawing drawing = CircuitDrawing.asFound(Sample.wires(List.of("a", "b", "c")).cautioned().good(1).bad(1).good(2).hunt());
        assertThat(drawing.marks()).containsExactly(PointMark.NOT_TESTED, PointMark.BOTH, PointMark.GOOD);
    }

    @Test
    void whereNobodyCanInjectThereIsNoMark() {
        Source circuit = new Source("inside.yaml", Sample.circuit(List.of("a", "b", "c"), "inject: no"));
        CircuitDrawing drawing = CircuitDrawing.asFound(Sample.of(circuit, false, "None").cautioned()
                .bad(0).bad(0).bad(0).good(2).good(2).good(2).hunt());
        assertThat(drawing.marks()).containsExactly(PointMark.BAD, PointMark.CLOSED, PointMark.GOOD);
        assertThat(drawing.convicted()).as("the two wires that nothing tells apart").isEqualTo(Set.of(1, 2));
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 5, 6, 12, 64})
    void everyPointIsDrawnOnceWithItsMark(int points) {
        Sample sample = Sample.wires(names(points, "point")).cautioned().bad(0).good(points - 1);
        List<Element> marks = marks(CircuitDrawing.asFound(sample.hunt()).svg());
        assertThat(marks).hasSize(points);
        assertThat(marks.stream().filter(mark -> mark.getAttribute("class").equals("mark bad"))).hasSize(1);
        assertThat(marks.stream().filter(mark -> mark.getAttribute("class").equals("mark good"))).hasSize(1);
        assertThat(marks.stream().filter(mark -> mark.getAttribute("class").equals("mark not-tested"))).hasSize(points - 2);
    }

    @Test
    void marksAreToldApartWithoutColour() {
        Sample sample = Sample.wires(List.of("a", "b", "c", "d")).cautioned().bad(0).good(1).bad(1).good(2);
        Set<String> shapes = new HashSet<>();
        for (Element mark : marks(CircuitDrawing.asFound(sample.hunt()).svg())) {
            Element sign = (Element) mark.getFirstChild();
            shapes.add(sign.getTagName() + (sign.getAttribute("stroke-dasharray").isEmpty() ? "" : " dashed"));
        }
        assertThat(shapes).containsExactlyInAnyOrder("rect", "path", "circle", "circle dashed");
    }

    private static List<String> names(int count, String name) {
        return IntStream.rangeClosed(1, count).mapToObj(i -> name + " " + i).toList();
    }

    private static List<Element> marks(List<String> rows) {
        return rows.stream().flatMap(row -> Pages.ofClass(Pages.parsed(row).getDocumentElement(), "g", "mark").stream()).toList();
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 5, 6, 12, 64})
    void noNameRunsIntoAnotherNorOverTheEdge(int points) {
        List<String> names = IntStream.rangeClosed(1, points).mapToObj(i -> i % 2 == 0
                ? "WWWWWWWW-MAXIMUMLONGNAMEWITHOUTABLANKWHATSOEVER-" + i : "connector under the left-hand panel, third from top, " + i)
                .toList();
        for (String row : CircuitDrawing.asFound(Sample.wires(names).cautioned().bad(0).hunt()).svg()) {
            Element svg = Pages.parsed(row).getDocumentElement();
            double height = Double.parseDouble(svg.getAttribute("height"));
            List<double[]> boxes = new ArrayList<>();
            for (Element text : Pages.elements(svg, "text")) {
                double size = text.getAttribute("font-size").isEmpty() ? 15 : Double.parseDouble(text.getAttribute("font-size"));
                double half = trueWidth(text.getTextContent(), size) / 2;
                double x = Double.parseDouble(text.getAttribute("x"));
                double y = Double.parseDouble(text.getAttribute("y"));
                assertThat(x - half).as(text.getTextContent()).isGreaterThanOrEqualTo(0);
                assertThat(x + half).as(text.getTextContent()).isLessThanOrEqualTo(1000);
                assertThat(y - size).isGreaterThanOrEqualTo(0);
                assertThat(y).isLessThan(height);
                for (double[] other : boxes) {
                    boolean sameLine = Math.abs(other[2] - y) < size;
                    assertThat(sameLine && other[0] < x + half && x - half < other[1]).as(text.getTextContent()).isFalse();
                }
                boxes.add(new double[] {x - half, x + half, y});
            }
        }
    }

    @Test
    void estimatedWidthsAreNeverTooSmall() {
        PdfLetters drawable = new PdfLetters();
        // those in use; two letters in one, and historic ones, are wider, and nobody's connector is called by them alone
        String letters = IntStream.concat(IntStream.range(0x20, 0x180), IntStream.range(0x370, 0x460))
                .filter(letter -> Character.isLetterOrDigit(letter) || letter < 0x7F)
                .mapToObj(Character::toString).filter(letter -> drawable.apply(letter).equals(letter)).collect(Collectors.joining());
        assertThat(letters).contains("@", "W", "\u00e6", "\u0429");
        letters.codePoints().mapToObj(Character::toString).forEach(letter ->
                assertThat(TextWidth.of(letter)).as(letter).isGreaterThanOrEqualTo(trueWidth(letter, 1)));
    }

    /** By the font's own measures. */
    private static double trueWidth(String text, double size) {
        try {
            return FONT.getStringWidth(text) / 1000 * size;
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static final PDFont FONT = font();

    private static PDFont font() {
        try {
            return PDType0Font.load(new PDDocument(),
                    PDDocument.class.getResourceAsStream("/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf"));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
