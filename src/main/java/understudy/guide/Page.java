package understudy.guide;

import java.util.List;
import org.commonmark.node.Heading;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;

/** One page of the guide. It begins with its title as a heading, then a paragraph of one sentence, its summary. */
public final class Page {

    private final String name;
    private final String markdown;
    private final String title;
    private final String summary;

    Page(String name, String markdown) {
        this.name = name;
        this.markdown = markdown;
        Node first = Markdown.parse(markdown).getFirstChild();
        if (!(first instanceof Heading heading) || !(first.getNext() instanceof Paragraph paragraph)) {
            throw new IllegalStateException(name + ": a page begins with a heading and its summary");
        }
        this.title = PlainText.of(heading);
        this.summary = PlainText.of(paragraph);
    }

    /** By which it is asked for. */
    public String name() {
        return name;
    }

    public String title() {
        return title;
    }

    /** One sentence. */
    public String summary() {
        return summary;
    }

    /** For a screen that knows only characters. */
    public List<Block> blocks() {
        return Blocks.of(Markdown.parse(markdown));
    }

    /** The page's body as HTML, drawings inlined. */
    String html() {
        return Markdown.html(Markdown.parse(markdown));
    }
}
