package understudy.guide;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import understudy.pattern.Hazard;
import understudy.preflight.Limit;
import understudy.rig.OutOfReach;

/** The pages as a whole: all there, all reachable, complete in themselves. */
class PageTest {

    private static final Path SOURCES = Path.of("src/main/resources/guide");
    private static final Pattern LINK = Pattern.compile("href=\"([^\"]*)\"");

    @TempDir
    private Path folder;

    private static List<String> sources(String ending) throws IOException {
        try (Stream<Path> files = Files.list(SOURCES)) {
            return files.map(file -> file.getFileName().toString()).filter(name -> name.endsWith(ending)).sorted().toList();
        }
    }

    static List<String> drawings() throws IOException {
        return sources(".svg");
    }

    @Test
    void everyPageThatIsThereIsListed() throws IOException {
        assertThat(sources(".md")).isEqualTo(Guide.names().stream().sorted().map(name -> name + ".md").toList());
    }

    @Test
    void everyCautionIsToldRulesFirst() {
        String page = words(Guide.find("before").orElseThrow());
        for (Hazard hazard : Hazard.values()) {
            assertThat(page).contains(hazard.title()).contains(hazard.whatCanHappen())
                    .contains("What to do: " + hazard.whatToDo());
            assertThat(page.indexOf(hazard.title())).isGreaterThanOrEqualTo(page.indexOf(Hazard.RULES.title()));
        }
    }

    @Test
    void everyKindOutOfReachIsToldWithItsReason() {
        String page = words(Guide.find("reach").orElseThrow());
        for (OutOfReach kind : OutOfReach.values()) {
            assertThat(page).containsIgnoringCase(kind.what() + ": " + kind.reason());
        }
    }

    @Test
    void everythingThatEndsARangeIsExplained() {
        String page = words(Guide.find("preflight").orElseThrow());
        // the pattern's own end and several at once explain themselves
        Arrays.stream(Limit.values()).filter(limit -> limit != Limit.PATTERN && limit != Limit.TOGETHER)
                .forEach(limit -> assertThat(page).containsIgnoringCase(limit.words().replaceAll(":.*", "")));
    }

    @Test
    void everyDrawingIsUsed() throws IOException {
        String all = String.join("", Guide.names().stream().map(name -> Resource.text(name + ".md")).toList());
        assertThat(drawings()).isNotEmpty().allSatisfy(drawing -> assertThat(all).contains("(" + drawing + ")"));
    }

    /** The drawing in characters names the same parts, in words that the other has too. */
    @ParameterizedTest
    @MethodSource("drawings")
    void aDrawingSaysTheSameInCharacters(String drawing) throws Exception {
        NodeList texts = DocumentBuilderFactory.newInstance().newDocumentBuilder()
                .parse(new InputSource(new StringReader(Resource.text(drawing)))).getElementsByTagName("text");
        String characters = Resource.text(drawing.replace(".svg", ".txt"));
        for (int i = 0; i < texts.getLength(); i++) {
            for (String word : texts.item(i).getTextContent().split("[\\s,]+")) {
                assertThat(characters).as(drawing).contains(word);
            }
        }
    }

    @Test
    void htmlAsksForNothingAndItsLinksLeadSomewhere() throws IOException {
        GuideHtml.write(folder);
        for (String name : Stream.concat(Guide.names().stream(), Stream.of(GuideHtml.INDEX)).toList()) {
            String html = Files.readString(GuideHtml.file(folder, name));
            String withoutNamespace = html.replace("xmlns=\"http://www.w3.org/2000/svg\"", "");
            assertThat(withoutNamespace).as(name)
                    .doesNotContain("http:", "https:", "<img", "<script", "<link", "@import", "url(", "src=");
            assertThat(LINK.matcher(html).results().map(link -> link.group(1)))
                    .allSatisfy(link -> assertThat(folder.resolve(link)).as(name).isNotEmptyFile());
        }
    }

    @Test
    void htmlHoldsDrawingsAndTables() throws IOException {
        GuideHtml.write(folder);
        assertThat(Files.readString(GuideHtml.file(folder, "box")))
                .contains("<title>The box, from four parts</title>", "<figure>\n<svg ", "<th>what it is</th>", "<blockquote>")
                .doesNotContain("<p><svg", "<p><figure");
        assertThat(Files.readString(GuideHtml.file(folder, GuideHtml.INDEX)))
                .contains("<a href=\"box.html\">The box, from four parts</a>");
    }

    static String words(Page page) {
        StringBuilder words = new StringBuilder();
        for (Block block : page.blocks()) {
            if (block instanceof Block.Heading heading) {
                words.append(heading.text());
            } else if (block instanceof Block.Text text) {
                words.append(text.text());
            } else if (block instanceof Block.Warning warning) {
                words.append(warning.text());
            } else if (block instanceof Block.Item item) {
                words.append(item.text());
            } else if (block instanceof Block.Rows rows) {
                rows.rows().forEach(row -> words.append(String.join(" | ", row)).append('\n'));
            }
            words.append('\n');
        }
        return words.toString();
    }
}
