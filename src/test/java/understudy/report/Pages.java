package understudy.report;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Reads a report as any other program would: with the platform's XML parser. */
final class Pages {

    private Pages() {}

    static Document of(Sample sample) {
        return parsed(ReportFile.html(sample.report(), Paper.A4));
    }

    static Document parsed(String xml) {
        try {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
        } catch (Exception e) {
            throw new AssertionError("not well-formed: " + e.getMessage(), e);
        }
    }

    static String text(Document page) {
        return page.getDocumentElement().getTextContent();
    }

    /** The text of the section with that heading. */
    static String section(Document page, String heading) {
        return element(page, heading).getTextContent().substring(heading.length());
    }

    static Element element(Document page, String heading) {
        return elements(page.getDocumentElement(), "section").stream()
                .filter(section -> elements(section, "h2").get(0).getTextContent().equals(heading)).findFirst()
                .orElseThrow(() -> new AssertionError("no section \"" + heading + "\""));
    }

    static List<Element> elements(Element in, String tag) {
        NodeList nodes = in.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    static List<Element> ofClass(Element in, String tag, String name) {
        return elements(in, tag).stream().filter(one -> List.of(one.getAttribute("class").split(" ")).contains(name)).toList();
    }

    static List<String> warnings(Document page) {
        return ofClass(page.getDocumentElement(), "p", "warning").stream().map(Element::getTextContent).toList();
    }
}
