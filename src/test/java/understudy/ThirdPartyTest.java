package understudy;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The jar says whose libraries it holds, in the versions that it holds. */
class ThirdPartyTest {

    @Test
    void everyLibraryThatShipsIsNamedWithItsVersion() throws Exception {
        String notice = new String(ThirdPartyTest.class.getResourceAsStream("/META-INF/THIRD-PARTY.md").readAllBytes(),
                StandardCharsets.UTF_8);
        List<Element> shipped = shipped();
        assertThat(shipped).hasSizeGreaterThan(8).allSatisfy(library -> {
            assertThat(notice).contains(text(library, "artifactId"));
            assertThat(notice).contains(version(library));
        });
    }

    /** The dependencies of the project itself that are not for tests. */
    private static List<Element> shipped() throws Exception {
        Document pom = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(Path.of("pom.xml").toFile());
        NodeList all = pom.getElementsByTagName("dependency");
        List<Element> shipped = new ArrayList<>();
        for (int index = 0; index < all.getLength(); index++) {
            Element dependency = (Element) all.item(index);
            boolean ofTheProject = dependency.getParentNode().getParentNode() == pom.getDocumentElement();
            if (ofTheProject && text(dependency, "scope").isEmpty()) {
                shipped.add(dependency);
            }
        }
        return shipped;
    }

    /** Versions stand among the properties. */
    private static String version(Element dependency) {
        String version = text(dependency, "version");
        return version.startsWith("${")
                ? text(dependency.getOwnerDocument().getDocumentElement(), version.substring(2, version.length() - 1)) : version;
    }

    private static String text(Element dependency, String name) {
        NodeList found = dependency.getElementsByTagName(name);
        return found.getLength() == 0 ? "" : found.item(0).getTextContent().strip();
    }
}
