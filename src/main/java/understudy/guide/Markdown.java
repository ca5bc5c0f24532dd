package understudy.guide;

import java.util.List;
import java.util.Optional;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/** The pages' own use of CommonMark: tables as well, links from page to page, drawings that stand alone in a paragraph. */
final class Markdown {

    private static final List<Extension> TABLES = List.of(TablesExtension.create());
    private static final Parser PARSER = Parser.builder().extensions(TABLES).build();
    private static final HtmlRenderer RENDERER = HtmlRenderer.builder().extensions(TABLES).build();
    private static final String PAGE_ENDING = ".md";

    private Markdown() {}

    static Node parse(String markdown) {
        return PARSER.parse(markdown);
    }

    /** Changes the nodes, which are good for nothing else afterwards. */
    static String html(Node document) {
        document.accept(new AbstractVisitor() {
            @Override
            public void visit(Paragraph paragraph) {
                if (drawing(paragraph).isPresent()) {
                    HtmlBlock figure = new HtmlBlock();
                    Image image = drawing(paragraph).get();
                    figure.setLiteral("<figure>\n" + Resource.text(image.getDestination()) + "</figure>");
                    paragraph.insertAfter(figure);
                    paragraph.unlink();
                } else {
                    visitChildren(paragraph);
                }
            }

            @Override
            public void visit(Link link) {
                page(link).ifPresent(name -> link.setDestination(name + ".html"));
            }
        });
        return RENDERER.render(document);
    }

    /** Text as it must stand between tags. */
    static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    /** The drawing that makes up the whole paragraph. */
    static Optional<Image> drawing(Paragraph paragraph) {
        return paragraph.getFirstChild() instanceof Image image && image.getNext() == null
                ? Optional.of(image)
                : Optional.empty();
    }

    /** The page that a link leads to. */
    static Optional<String> page(Link link) {
        String to = link.getDestination();
        return to.endsWith(PAGE_ENDING) ? Optional.of(to.substring(0, to.length() - PAGE_ENDING.length())) : Optional.empty();
    }
}
