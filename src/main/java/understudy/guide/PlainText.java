package understudy.guide;

import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;

/** Running text without its marks; what is to be typed stands in quotes, a link names the page. */
final class PlainText extends AbstractVisitor {

    private final StringBuilder text = new StringBuilder();

    private PlainText() {}

    static String of(Node node) {
        PlainText reader = new PlainText();
        reader.visitChildren(node);
        return reader.text.toString();
    }

    @Override
    public void visit(Text words) {
        text.append(words.getLiteral());
    }

    @Override
    public void visit(Code code) {
        text.append('\'').append(code.getLiteral()).append('\'');
    }

    @Override
    public void visit(SoftLineBreak lineBreak) {
        text.append(' ');
    }

    @Override
    public void visit(HardLineBreak lineBreak) {
        text.append(' ');
    }

    @Override
    public void visit(Link link) {
        visitChildren(link);
        Markdown.page(link).ifPresent(page -> text.append(" (guide page ").append(page).append(")"));
    }
}
